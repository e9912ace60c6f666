// The masses of every product, in whole milligrams.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { Material } from "#physics/materials/material.ts";
import { checkProduct } from "./checkProduct.ts";
import { resolveMaterial } from "./resolveMaterial.ts";
import type { FlashSpec } from "#scenario/values/flashLeaf.ts";
import type { ProductDraft, Resolution, StationDraft } from "./resolution.ts";

export interface ProductMasses {
  readonly partMilligrams: number;
  readonly flashMilligrams: number;
  readonly material?: Material;
}

/** The only product needs no name of its own. */
const onlyName = "product";

/** Every product by name; undefined for one whose masses could not be read. */
export type Products = ReadonlyMap<string, ProductMasses | undefined>;

export function resolveProducts(resolution: Resolution): Products {
  const { draft, has, report } = resolution;
  const [one, several] = [has(["product"]), has(["products"])];
  if (one && several) {
    const remedy = "Move `product` into `products` under a name, or delete one of them.";
    report({
      code: "product-and-products",
      message: "Both `product` and `products` are given.",
      remedy,
      path: ["products"],
      at: "key",
    });
  }
  if (!one && !several) {
    const expected = "`product: { partMass: 42 g, flash: 30 % of part }`";
    report({
      code: "missing",
      message: "`product` is missing.",
      expected,
      remedy: `Add ${expected}.`,
      path: ["product"],
    });
  }
  const products = new Map<string, ProductMasses | undefined>();
  const add = (name: string, product: ProductDraft | undefined, path: Path): void => {
    const masses = massesOf(product);
    const material = resolveMaterial(product, path, resolution);
    checkProduct(product, material, path, resolution);
    products.set(name, masses && material ? { ...masses, material } : masses);
  };
  if (one) add(onlyName, draft.product, ["product"]);
  for (const [name, product] of Object.entries(draft.products ?? {})) add(name, product, ["products", name]);
  return products;
}

function massesOf(product: ProductDraft | undefined): ProductMasses | undefined {
  const { partMass, flash } = product ?? {};
  if (partMass === undefined || flash === undefined) return undefined;
  return { partMilligrams: partMass, flashMilligrams: flashOf(partMass, flash as FlashSpec) };
}

function flashOf(partMilligrams: number, flash: FlashSpec): number {
  if (flash.of === "itself") return flash.milligrams;
  // Of the shot s: flash = s·shot and part = (1 − s)·shot.
  const share = flash.of === "part" ? flash.share : flash.share / (1 - flash.share);
  return Math.round(partMilligrams * share);
}

/** The name of a station's product; undefined, and reported, where it cannot be told. */
export function productOf(
  station: StationDraft,
  path: Path,
  products: Products,
  { has, report }: Resolution,
): string | undefined {
  const names = [...products.keys()];
  const at = [...path, "product"];
  const expected = `one of ${names.map((name) => `\`${name}\``).join(", ")}`;
  if (!has(at)) {
    if (names.length < 2) return names[0];
    const message = "It is not said which product this station makes.";
    report({ code: "product-which", message, expected, remedy: `Add \`product: ${names[0]}\`.`, path: at });
    return undefined;
  }
  if (station.product === undefined || products.has(station.product)) return station.product;
  const meant = didYouMean(station.product, names);
  const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
  const message = `There is no product "${station.product}".`;
  report({ code: "product-unknown", message, expected, remedy, path: at });
  return undefined;
}
