// The diameter swell of a parison from its thickness swell.

/**
 * Diameter swell of a parison that swells freely.
 *
 *     B_D = √B_T
 *
 * Units: both are ratios to the die.
 * Shape: 1 without swell, slower than the thickness swell.
 * Holds for: equal swell around and through the wall; a measured diameter swell is better.
 * Source: Crawford, Plastics Engineering, 3rd ed., 1998, section 4.2 and example 4.4
 * Throws: nothing.
 *
 * @example
 * diameterSwell(2) // 1.414
 */
export function diameterSwell(thicknessSwell: number): number {
  return Math.sqrt(thicknessSwell);
}
