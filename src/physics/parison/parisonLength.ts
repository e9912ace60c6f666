// The length of the parison of a shot after swell.
import type { AnnularDie } from "./annularDie.ts";
import { diameterSwell } from "./diameterSwell.ts";
import { PI } from "#physics/numeric/pi.ts";

/**
 * Length of a parison from its mass.
 *
 *     L = m / (ρ π D_m B_D H B_T),   B_D = √B_T
 *
 * Units: m in kg, ρ the melt density in kg/m³, D_m and H in m, swells as ratios; L in m.
 * Shape: proportional to the mass; shorter where the melt swells more.
 * Holds for: a thin wall, before it sags, and one setting of the die gap along its length.
 * Source: Derived here from the conservation of mass with the swell of Crawford, Plastics Engineering, 3rd ed., 1998, section 4.2
 * Throws: nothing.
 *
 * @example
 * parisonLength({ mass: 0.060, meltDensity: 760, die: annularDie(0.030, 0.027), thicknessSwell: 2 }) // 0.2078
 */
export function parisonLength(parison: {
  readonly mass: number;
  readonly meltDensity: number;
  readonly die: AnnularDie;
  readonly thicknessSwell: number;
}): number {
  const { mass, meltDensity, die, thicknessSwell } = parison;
  const circle = PI * die.meanDiameter * diameterSwell(thicknessSwell);
  return mass / (meltDensity * circle * die.gap * thicknessSwell);
}
