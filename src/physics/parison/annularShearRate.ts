// The shear rate of a Newtonian melt at the lips of a die.
import type { AnnularDie } from "./annularDie.ts";
import { PI } from "#physics/numeric/pi.ts";

/**
 * Shear rate at the wall of a thin annular gap, Newtonian.
 *
 *     γ = 6 Q / (π D_m H²)
 *
 * Units: Q in m³/s, D_m and H in m; γ in 1/s.
 * Shape: proportional to the flow; half the gap has four times the shear rate.
 * Holds for: H much smaller than D_m.
 * Source: Michaeli, Extrusion Dies for Plastics and Rubber, 3rd ed., 2003, section 3.1 (from memory)
 * Throws: nothing.
 *
 * @example
 * annularShearRate(4.386e-5, annularDie(0.030, 0.027)) // 1306
 */
export function annularShearRate(flow: number, die: AnnularDie): number {
  return (6 * flow) / (PI * die.meanDiameter * die.gap * die.gap);
}
