// Checks that the values of a product agree: a mold colder than the melt, a mandrel inside its bushing, and so on.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Material } from "#physics/materials/material.ts";
import type { WindowKeyRow } from "#physics/window/windowKeyRow.ts";
import { windowKeys, type QuantityKey } from "#physics/window/windowKeys.ts";
import { valueAt } from "#scenario/reading/pathPattern.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { ProductDraft, Resolution } from "./resolution.ts";
import { kelvin } from "./windowNumber.ts";

interface Rise {
  readonly lower: QuantityKey;
  readonly higher: QuantityKey;
  /** The lower value counts twice. */
  readonly twice?: true;
  /** Equal values do not contradict each other. */
  readonly mayMeet?: true;
}

/** The formulas hold only where these values rise: otherwise a time has no end, or a gap no width. */
const rises: readonly Rise[] = [
  { lower: "product.moldTemperature", higher: "product.demoldTemperature" },
  { lower: "product.demoldTemperature", higher: "product.meltTemperature" },
  { lower: "product.insideAir.temperature", higher: "product.demoldTemperature" },
  { lower: "product.die.mandrel", higher: "product.die.diameter" },
  { lower: "product.die.gap", higher: "product.die.diameter", twice: true },
  { lower: "product.wall.mean", higher: "product.wall.thickest", mayMeet: true },
  { lower: "product.ventTo", higher: "product.blowPressure" },
];

/** One side of a comparison, in the unit of a draft. */
interface Side {
  readonly name: string;
  /** From the product. */
  readonly path: Path;
  readonly value: number;
}

export function checkProduct(
  product: ProductDraft | undefined,
  material: Material | undefined,
  path: Path,
  { report }: Resolution,
): void {
  for (const { lower, higher, twice, mayMeet } of rises) {
    const [once, high] = [lower, higher].map((key) => sideOf(key, product, material));
    if (once === undefined || high === undefined) continue;
    const low = twice === true ? { ...once, name: `Twice ${once.name}`, value: 2 * once.value } : once;
    if (low.value < high.value || (mayMeet === true && low.value === high.value)) continue;
    const [less, more] = [low, high].map(({ name, value }) => `${name} of ${shown(value, lower)}`);
    report({
      code: "values-contradict",
      message: `${less} is not below ${more}.`,
      expected: `${low.name} below ${high.name}`,
      remedy: "Check both for a slip.",
      path: [...path, ...(high.path[0] === "material" ? low : high).path],
    });
  }
}

/** The value that the product gives, else that of its material; undefined where neither has one. */
function sideOf(key: QuantityKey, product: ProductDraft | undefined, material: Material | undefined): Side | undefined {
  const path = key.split(".").slice(1);
  const value = valueAt(product, path);
  if (typeof value === "number") return { name: `\`${path.join(".")}\``, path, value };
  const { otherwise }: WindowKeyRow = windowKeys[key];
  if (material === undefined || otherwise === undefined || !("material" in otherwise)) return undefined;
  const property = otherwise.material;
  return { name: `the material's \`${property}\``, path: ["material"], value: material[property].value + kelvin };
}

function shown(value: number, key: QuantityKey): string {
  return formatQuantity(value, windowKeys[key].dimension, { digits: 4 });
}
