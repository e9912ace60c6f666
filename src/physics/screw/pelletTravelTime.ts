// The time that a colored pellet needs from hopper to die.
import { residenceTime } from "./residenceTime.ts";

/**
 * Travel time of a colored pellet from hopper to die.
 *
 *     t = (M_screw + M_shot + M_manifold + …) / ṁ
 *
 * Units: hold-ups in kg, in the order of flow, throughput ṁ in kg/s averaged over cycles with their waits; t in s.
 * Shape: the sum of the residence times of the parts passed.
 * Holds for: plug flow. The first trace comes earlier, and traces of the old color last longer. Hopper to screw tip takes
 * about 48 s on an in-line 2½-inch reciprocating-screw unit at its production rate (common practice, no published source).
 * Source: Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, chapter 11 (from memory)
 * Throws: nothing.
 *
 * @example
 * pelletTravelTime([0.727, 0.110, 0.363], 54.5 / 3600) // 79.27
 */
export function pelletTravelTime(holdUps: readonly number[], throughput: number): number {
  return holdUps.reduce((time, holdUp) => time + residenceTime(holdUp, throughput), 0);
}
