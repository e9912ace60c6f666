// From what a product says of its material to the catalogue's plastic, with the user's own values in place of the catalogue's.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Material } from "#physics/materials/material.ts";
import { materials } from "#physics/materials/materials.ts";
import { ownMaterial, type MaterialProperty } from "#physics/materials/ownMaterial.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { ProductDraft, Resolution } from "./resolution.ts";

export type Possible<Values> = { readonly [Key in keyof Values]?: Values[Key] | undefined };

/** 0 °C. */
export const kelvin = 273.15;

export function celsius(temperature: number | undefined): number | undefined {
  return temperature === undefined ? undefined : temperature - kelvin;
}

/** Undefined where none is named, or, told, where it is not known. */
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
        ? "The material has no name from the catalogue."
        : `There is no material "${name}" in the catalogue.`,
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

function ownValues(said: OwnMaterial): Readonly<Partial<Record<MaterialProperty, number>>> {
  const values: Possible<Record<MaterialProperty, number>> = {
    density: said.density,
    meltDensity: said.meltDensity,
    conductivity: said.conductivity,
    specificHeat: said.specificHeat,
    coolingDiffusivity: said.diffusivity,
    heatOfFusion: said.heatOfFusion,
    zeroShearViscosity: said.viscosity,
    dieViscosity: said.dieViscosity,
    powerLawIndex: said.powerLawIndex,
    fractureStress: said.fractureStress,
    meltTemperature: celsius(said.meltTemperature),
    moldTemperature: celsius(said.moldTemperature),
    demoldTemperature: celsius(said.demoldTemperature),
    timeAtHeat: said.maxTimeAtHeat,
  };
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
}
