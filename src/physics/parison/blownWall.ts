// The wall of a bottle from die gap, swell and blow-up ratio.
import type { AnnularDie } from "./annularDie.ts";
import { diameterSwell } from "./diameterSwell.ts";

/**
 * Mean wall of a round bottle.
 *
 *     h_b = H B_T · B_D D_m / D_b,   B_D = √B_T
 *
 * Units: gap H, mean die diameter D_m and bottle diameter D_b in m, swells as ratios; h_b in m.
 * Shape: proportional to the gap, inverse to the bottle's diameter.
 * Holds for: a round bottle blown without axial stretch, and a parison without sag.
 * Source: Crawford, Plastics Engineering, 3rd ed., 1998, section 4.2 and example 4.4
 * Throws: nothing.
 *
 * @example
 * blownWall(annularDie(0.030, 0.027), 2, 0.050) // 0.00242
 */
export function blownWall(die: AnnularDie, thicknessSwell: number, bottleDiameter: number): number {
  const parison = die.meanDiameter * diameterSwell(thicknessSwell);
  return (die.gap * thicknessSwell * parison) / bottleDiameter;
}
