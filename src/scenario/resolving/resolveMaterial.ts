// From the material of a product to a material of the catalog, with the user's own values in place of its own.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Material, MaterialProperty } from "#physics/materials/material.ts";
import { materialTable, type PropertyRow } from "#physics/materials/materialTable.ts";
import { materials } from "#physics/materials/materials.ts";
import { ownMaterial } from "#physics/materials/ownMaterial.ts";
import { valueAt } from "#scenario/reading/pathPattern.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { ProductDraft, Resolution } from "./resolution.ts";
import { windowNumber } from "./windowNumber.ts";

/** Undefined where no material is named; an unknown one is reported. */
export function resolveMaterial(
  product: ProductDraft | undefined,
  path: Path,
  { report }: Resolution,
): Material | undefined {
  const said = product?.material;
  if (said === undefined) return undefined;
  const name = typeof said === "string" ? said : said.name;
  const base = name === undefined ? undefined : materials.get(name);
  if (base) return typeof said === "string" ? base : ownMaterial(base, ownValues(said));
  const names = [...materials.keys()];
  const meant = name === undefined ? undefined : didYouMean(name, names);
  const expected = `one of ${names.map((each) => `\`${each}\``).join(", ")}`;
  report({
    code: "material-unknown",
    message:
      name === undefined
        ? "The material has no name from the catalog."
        : `There is no material "${name}" in the catalog.`,
    expected,
    remedy:
      meant === undefined
        ? `Write the nearest of them and give the values that differ: \`{ name: HDPE, meltDensity: 760 kg/m³ }\`.`
        : `Did you mean \`${meant}\`?`,
    path: [...path, "material"],
  });
  return undefined;
}

type OwnMaterial = Exclude<NonNullable<ProductDraft["material"]>, string>;

const properties: readonly (readonly [string, PropertyRow])[] = Object.entries(materialTable);

function ownValues(said: OwnMaterial): Readonly<Partial<Record<MaterialProperty, number>>> {
  const values = properties.map(([property, { key = property, dimension }]) => {
    return [property, windowNumber(valueAt(said, [key]), dimension)] as const;
  });
  return Object.fromEntries(values.filter(([, value]) => value !== undefined));
}
