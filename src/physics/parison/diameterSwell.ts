// How much wider than the die a parison grows, from how much thicker its wall grows.

/**
 * Diameter swell of a parison that swells freely.
 *
 *     B_D = √B_T
 *
 * Units: both are ratios to the die.
 * Shape: 1 where nothing swells, slower than the thickness swell.
 * Holds for: swell alike around and through the wall; a measured diameter swell wins.
 * Source: Crawford, Plastics Engineering, 3rd ed., 1998, section 4.2 and example 4.4
 * Throws: nothing.
 *
 * @example
 * diameterSwell(2) // 1.414
 */
export function diameterSwell(thicknessSwell: number): number {
  return Math.sqrt(thicknessSwell);
}
