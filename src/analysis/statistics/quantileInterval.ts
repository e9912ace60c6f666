// The confidence interval of a quantile between two order statistics, for any distribution of the values.
import { invariant } from "#foundation/invariant.ts";
import { binomialShares } from "./binomialShares.ts";
import { CONFIDENCE } from "./interval.ts";

export interface QuantileInterval {
  /** Null where too few values give no bound on that side. */
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * With B binomial of n and p, the quantile lies below the value of rank l with probability P(B < l), and above the value of rank u
 * with P(B ≥ u). l is the highest and u the lowest rank that keep each probability at (1 − confidence)/2 or below.
 *
 * Shape: ranks from 1 in ascending order. Errors: none. Valid for independent values of one continuous distribution.
 * Source: David and Nagaraja, Order Statistics (2003), section 7.1 (from memory).
 */
export function quantileInterval(
  values: readonly number[],
  p: number,
  confidence: number = CONFIDENCE,
): QuantileInterval {
  invariant(p > 0 && p < 1, "a quantile lies between 0 and 1", { p });
  const sorted = Float64Array.from(values).toSorted();
  const tail = (1 - confidence) / 2;
  const shares = binomialShares(values.length, p);
  // P(B < l) grows with l, and P(B >= u) falls with u.
  let low = 0;
  for (let below = shares[0]!; low < sorted.length && below <= tail; low++) below += shares[low + 1]!;
  let high = sorted.length + 1;
  for (let above = shares[sorted.length]!; high > 1 && above <= tail; high--) above += shares[high - 2]!;
  return { low: sorted[low - 1] ?? null, high: sorted[high - 1] ?? null };
}
