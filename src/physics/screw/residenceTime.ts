// The mean time that melt stays in a volume.

/**
 * Mean residence time.
 *
 *     t = M / ṁ
 *
 * Units: hold-up M in kg, throughput ṁ in kg/s averaged over cycles WITH their waits; t in s.
 * Shape: proportional to the hold-up. In dead corners some melt stays far longer.
 * Holds for: steady production.
 * Source: Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, chapter 11 (from memory)
 * Throws: nothing.
 *
 * @example
 * residenceTime(1.2, 60 / 3600) // 72
 */
export function residenceTime(holdUp: number, throughput: number): number {
  return holdUp / throughput;
}
