// How long plastic stays inside something that it flows through.

/**
 * Mean residence time.
 *
 *     t = M / ṁ
 *
 * Units: hold-up M in kg, throughput ṁ in kg/s averaged over cycles WITH their waits; t in s.
 * Shape: proportional to what is inside. Dead corners hold some melt far longer.
 * Holds for: steady running.
 * Source: Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, chapter 11 (from memory)
 * Throws: nothing.
 *
 * @example
 * residenceTime(1.2, 60 / 3600) // 72
 */
export function residenceTime(holdUp: number, throughput: number): number {
  return holdUp / throughput;
}
