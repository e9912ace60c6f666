// What a product's values must say together: a mold colder than the melt, a mandrel inside its bushing, and the like.
import type { Dimension } from "#foundation/dimension.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Material } from "#physics/materials/material.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { ProductDraft, Resolution } from "./resolution.ts";
import { kelvin } from "./resolveMaterial.ts";

/** One side of a comparison. */
interface Said {
  readonly name: string;
  readonly path: Path;
  readonly value: number | undefined;
}

interface Rise {
  readonly dimension: Dimension;
  readonly lower: Said;
  readonly higher: Said;
  /** Being alike is no contradiction. */
  readonly mayMeet?: boolean;
}

/** The formulas hold only where these rise; else a time would have no end, or a gap no width. */
export function checkProduct(
  product: ProductDraft | undefined,
  material: Material | undefined,
  path: Path,
  { report }: Resolution,
): void {
  for (const { dimension, lower, higher, mayMeet } of rises(product ?? {}, material)) {
    if (lower.value === undefined || higher.value === undefined) continue;
    if (lower.value < higher.value || (mayMeet === true && lower.value === higher.value)) continue;
    const [less, more] = [lower, higher].map(({ name, value }) => `${name} of ${shown(value ?? 0, dimension)}`);
    report({
      code: "values-contradict",
      message: `${less} is not below ${more}.`,
      expected: `${lower.name} below ${higher.name}`,
      remedy: "Check both for a slip.",
      path: [...path, ...(higher.path[0] === "material" ? lower : higher).path],
    });
  }
}

function shown(value: number, dimension: Dimension): string {
  return formatQuantity(value, dimension, { digits: 4 });
}

function rises(product: ProductDraft, material: Material | undefined): readonly Rise[] {
  const { wall, die } = product;
  const said = (name: string, value: number | undefined): Said => ({
    name: `\`${name}\``,
    path: name.split("."),
    value,
  });
  const twiceGap = { ...said("die.gap", die?.gap === undefined ? undefined : 2 * die.gap), name: "Twice `die.gap`" };
  return [
    ...temperatures(product, material),
    { dimension: "length", lower: said("die.mandrel", die?.mandrel), higher: said("die.diameter", die?.diameter) },
    { dimension: "length", lower: twiceGap, higher: said("die.diameter", die?.diameter) },
    {
      dimension: "length",
      lower: said("wall.mean", wall?.mean),
      higher: said("wall.thickest", wall?.thickest),
      mayMeet: true,
    },
    {
      dimension: "pressure",
      lower: said("ventTo", product.ventTo),
      higher: said("blowPressure", product.blowPressure),
    },
  ];
}

type Temperature = "moldTemperature" | "demoldTemperature" | "meltTemperature";

function warmth(product: ProductDraft, key: Temperature, material: Material | undefined): Said {
  if (product[key] !== undefined) return { name: `\`${key}\``, path: [key], value: product[key] };
  const usual = material && material[key].value + kelvin;
  return { name: `the material's \`${key}\``, path: ["material"], value: usual };
}

function temperatures(product: ProductDraft, material: Material | undefined): readonly Rise[] {
  const said = (key: Temperature): Said => warmth(product, key, material);
  const rise = (lower: Temperature, higher: Temperature): Rise => ({
    dimension: "temperature",
    lower: said(lower),
    higher: said(higher),
  });
  const air: Said = {
    name: "`insideAir.temperature`",
    path: ["insideAir", "temperature"],
    value: product.insideAir?.temperature,
  };
  return [
    rise("moldTemperature", "demoldTemperature"),
    rise("demoldTemperature", "meltTemperature"),
    { dimension: "temperature", lower: air, higher: said("demoldTemperature") },
  ];
}
