// How many replications a wanted precision takes, judged by those already made.
import { invariant } from "#foundation/invariant.ts";
import { CONFIDENCE, meanInterval, tFactor } from "./interval.ts";

/** Beyond so many nobody waits; the answer is then this number. */
const MOST = 1_000_000;

/**
 * The least number n, not below those made, for which the half width is expected within this share of the mean.
 * The share is first reduced from γ to γ/(1 + γ), since it is the unknown true mean that the error is a share of.
 * Null where one value or a mean of 0 tells nothing.
 * Source: Law, Simulation Modeling and Analysis, section 9.4.1 (from memory).
 */
export function requiredReplications(
  values: readonly number[],
  relativePrecision: number,
  confidence: number = CONFIDENCE,
): number | null {
  invariant(relativePrecision > 0, "a precision is above 0", { relativePrecision });
  const { count, mean, sd } = meanInterval(values, confidence);
  if (sd === null || mean === 0) return null;
  const wanted = (relativePrecision / (1 + relativePrecision)) * Math.abs(mean);
  const suffices = (n: number) => tFactor(confidence, n) * (sd / Math.sqrt(n)) <= wanted;
  if (suffices(count)) return count;
  return leastSufficient(suffices, count);
}

/** The least whole number above `tooFew` that suffices, given that all larger ones do as well. */
function leastSufficient(suffices: (n: number) => boolean, tooFew: number): number {
  let low = tooFew;
  let high = Math.min(MOST, 2 * tooFew);
  while (!suffices(high) && high < MOST) {
    low = high;
    high = Math.min(MOST, 2 * high);
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (suffices(middle)) high = middle;
    else low = middle;
  }
  return high;
}
