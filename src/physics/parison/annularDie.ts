// The gap of the die between bushing and mandrel.

export interface AnnularDie {
  /** Mean of bushing and mandrel, m. */
  readonly meanDiameter: number;
  /** m */
  readonly gap: number;
}

/**
 * A die from its two diameters.
 *
 *     D_m = (D_o + D_i)/2,   H = (D_o − D_i)/2
 *
 * Units: m.
 * Shape: the gap is 0 where both are equal.
 * Holds for: a round, centered die with parallel lips.
 * Source: Crawford, Plastics Engineering, 3rd ed., 1998, example 4.4
 * Throws: nothing.
 *
 * @example
 * annularDie(0.030, 0.027).meanDiameter // 0.0285
 */
export function annularDie(bushing: number, mandrel: number): AnnularDie {
  return { meanDiameter: (bushing + mandrel) / 2, gap: (bushing - mandrel) / 2 };
}
