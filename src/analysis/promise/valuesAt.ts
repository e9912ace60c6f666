// The smallest values that given shares of the runs do not exceed.

/**
 * The value of rank ⌈share × n⌉ in ascending order: an inverse of the empirical distribution, so that at least the share of the runs
 * is at or below it.
 * Source: definition 1 of Hyndman and Fan, The American Statistician 50 (1996) 361 (from memory).
 */
export function valuesAt(values: readonly number[], shares: readonly number[]): readonly number[] {
  const rising = Float64Array.from(values).toSorted();
  return shares.map((share) => rising[Math.max(0, Math.ceil(share * rising.length - ROUNDING) - 1)]!);
}

/** The product of a share and a whole number may lie above a whole number by rounding alone. */
const ROUNDING = 1e-9;
