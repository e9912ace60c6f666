// What every product is made of and weighs, in whole milligrams, and a finding where its mass is needed and not given.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { Material } from "#physics/materials/material.ts";
import { checkProduct } from "./checkProduct.ts";
import { resolveMaterial } from "./resolveMaterial.ts";
import type { FlashSpec } from "#scenario/values/flashLeaf.ts";
import type { ProductDraft, Resolution, StationDraft } from "./resolution.ts";

interface ProductMasses {
  readonly partMilligrams: number;
  readonly flashMilligrams: number;
}

export interface ResolvedProduct {
  /** Absent where no mass is given, or none that can be read. */
  readonly masses?: ProductMasses;
  /** Absent where none is named, or none that is known. */
  readonly material?: Material;
}

/** The only product needs no name of its own. */
const onlyName = "product";

/** Every product by name; none where a cell is timed only. */
export type Products = ReadonlyMap<string, ResolvedProduct>;

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
  const products = new Map<string, ResolvedProduct>();
  const add = (name: string, product: ProductDraft | undefined, path: Path): void => {
    const masses = massesOf(product);
    const material = resolveMaterial(product, path, resolution);
    checkProduct(product, material, path, resolution);
    products.set(name, { ...(masses ? { masses } : {}), ...(material ? { material } : {}) });
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

/** The name of a station's product; undefined, with a finding, where it is not known. */
export function productOf(
  station: StationDraft,
  path: Path,
  products: Products,
  { has, report }: Resolution,
): string | undefined {
  const names = [...products.keys()];
  const at = [...path, "product"];
  const expected = names.length === 0 ? "no `product`" : `one of ${names.map((name) => `\`${name}\``).join(", ")}`;
  if (!has(at)) {
    if (names.length < 2) return names[0] ?? onlyName;
    const message = "It is not said which product this station makes.";
    report({ code: "product-which", message, expected, remedy: `Add \`product: ${names[0]}\`.`, path: at });
    return undefined;
  }
  if (station.product === undefined || products.has(station.product)) return station.product;
  const meant = didYouMean(station.product, names);
  const known = names.length === 0 ? "Delete the key, or add `products`." : `Write ${expected}.`;
  const remedy = meant === undefined ? known : `Did you mean \`${meant}\`?`;
  const message = `There is no product "${station.product}".`;
  report({ code: "product-unknown", message, expected, remedy, path: at });
  return undefined;
}
