// A material with its viscosities at another melt temperature.
import pow from "@stdlib/math-base-special-pow";
import type { Datum } from "#physics/materials/datum.ts";
import type { Material } from "#physics/materials/material.ts";
import { viscosityShift } from "./viscosityShift.ts";

/**
 * The material with zero-shear viscosity and die viscosity at this temperature; the table has them at the usual melt temperature.
 *
 *     η₀ a_T,   η_r a_Tⁿ at the fixed shear rate of the die viscosity
 *
 * Units: °C.
 * Shape: thinner where the melt is hotter, in the die less than in the hanging parison.
 * Holds for: what viscosityShift holds for; low and high of the range go with low and high of the index n.
 * Source: Rao & Schumacher, Design Formulas for Plastics Engineers, 2nd ed., 2004, section 1.3 (in part read)
 * Throws: nothing.
 *
 * @example
 * materialAt(materials.get("HDPE"), 210).zeroShearViscosity.value / 100000 // 0.7401
 */
export function materialAt(material: Material, temperature: number): Material {
  const { activationEnergy, meltTemperature, zeroShearViscosity, dieViscosity, powerLawIndex } = material;
  const shift = viscosityShift(activationEnergy.value, meltTemperature.value, temperature);
  const scaled = (datum: Datum, factor: (bound: "value" | "low" | "high") => number): Datum => ({
    ...datum,
    value: datum.value * factor("value"),
    low: datum.low * factor("low"),
    high: datum.high * factor("high"),
  });
  return {
    ...material,
    zeroShearViscosity: scaled(zeroShearViscosity, () => shift),
    dieViscosity: scaled(dieViscosity, (bound) => pow(shift, powerLawIndex[bound])),
  };
}
