// The shortest drop time without melt fracture at the die.
import pow from "@stdlib/math-base-special-pow";
import type { AnnularDie } from "./annularDie.ts";
import { annularShearRate } from "./annularShearRate.ts";
import { DIE_REFERENCE_RATE } from "#physics/materials/materialTable.ts";
import { parisonFlow } from "./parisonFlow.ts";
import { powerLawShearRate } from "./powerLawShearRate.ts";

/** The melt of one parison and its die. */
export interface MeltInDie {
  /** kg */
  readonly mass: number;
  /** kg/m³ */
  readonly meltDensity: number;
  readonly die: AnnularDie;
  /** Pa s at 100 1/s. */
  readonly dieViscosity: number;
  readonly powerLawIndex: number;
  /** Pa */
  readonly fractureStress: number;
}

/**
 * The drop time at which the wall stress just reaches melt fracture.
 *
 *     t = γ_w(1 s) / γ_f · 1 s,   γ_f = γ_r (τ_f / (η_r γ_r))^(1/n),   γ_r = 100 1/s
 *
 * Units: τ_f in Pa, η_r in Pa s, rates in 1/s; t in s.
 * Shape: inverse to the square of the gap; shorter for a higher fracture stress.
 * Holds for: what wallShearStress holds for; a warning, never an error.
 * Source: Derived here as the inverse of wallShearStress, after Michaeli, Extrusion Dies for Plastics and Rubber, 3rd ed., 2003, section 3.1
 * Throws: nothing.
 *
 * @example
 * shortestDrop({ mass: 0.060, meltDensity: 760, die: annularDie(0.030, 0.027), dieViscosity: 2500, powerLawIndex: 0.5, fractureStress: 500000 }) // 7.838
 */
export function shortestDrop(melt: MeltInDie): number {
  const rateInOneSecond = annularShearRate(parisonFlow(melt.mass, melt.meltDensity, 1), melt.die);
  const ratio = melt.fractureStress / (melt.dieViscosity * DIE_REFERENCE_RATE);
  const fractureRate = DIE_REFERENCE_RATE * pow(ratio, 1 / melt.powerLawIndex);
  return powerLawShearRate(rateInOneSecond, melt.powerLawIndex) / fractureRate;
}
