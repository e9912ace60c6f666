// The property of the melt that sets the rate of sag.
import { elongationalViscosity } from "./elongationalViscosity.ts";
import { GRAVITY } from "#physics/numeric/gravity.ts";

/** The melt of a hanging parison. */
export interface HangingMelt {
  /** kg/m³ */
  readonly meltDensity: number;
  /** Pa s */
  readonly zeroShearViscosity: number;
}

/**
 * Rate of stretching at the top of a meter of hanging melt.
 *
 *     K = ρ g / (3 η₀)
 *
 * Units: ρ in kg/m³, g in m/s², η₀ in Pa s; K in 1/(m s).
 * Shape: half the viscosity has twice the rate.
 * Holds for: a Newtonian melt of one temperature along its length.
 * Source: Trouton, On the Coefficient of Viscous Traction and its Relation to that of Viscosity, Proceedings of the Royal Society A 77, 1906, p. 426 (from memory)
 * Throws: nothing.
 *
 * @example
 * sagConstant({ meltDensity: 760, zeroShearViscosity: 20000 }) // 0.12422
 */
export function sagConstant(melt: HangingMelt): number {
  return (melt.meltDensity * GRAVITY) / elongationalViscosity(melt.zeroShearViscosity);
}
