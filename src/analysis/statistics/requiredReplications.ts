// The number of replications that a wanted precision needs, estimated from those already made.
import { invariant } from "#foundation/invariant.ts";
import { CONFIDENCE, meanInterval, tFactor } from "./interval.ts";

/** The search ends here, and the answer is this number. */
const MOST = 1_000_000;

/**
 * The least number n, not below those made, for which the half width is expected within this share of the mean.
 * The share is first reduced from γ to γ/(1 + γ), because the error is a share of the unknown true mean.
 * `unseen` is a standard error of the mean that the values do not show; `reference` stands for the mean of the values.
 * Null for one value or a mean of 0.
 * Source: Law, Simulation Modeling and Analysis, section 9.4.1 (from memory).
 */
export function requiredReplications(
  values: readonly number[],
  relativePrecision: number,
  options: {
    readonly confidence?: number;
    readonly unseen?: number;
    readonly reference?: number | null;
  } = {},
): number | null {
  invariant(relativePrecision > 0, "a precision is above 0", { relativePrecision });
  const { confidence = CONFIDENCE, unseen = 0, reference = null } = options;
  const { count, mean, sd } = meanInterval(values);
  const whole = reference ?? mean;
  if (sd === null || whole === 0) return null;
  const wanted = (relativePrecision / (1 + relativePrecision)) * Math.abs(whole);
  const variance = sd * sd + count * unseen * unseen;
  const suffices = (n: number) => tFactor(confidence, n) * Math.sqrt(variance / n) <= wanted;
  if (suffices(count)) return count;
  return leastSufficient(suffices, count);
}

/** The least whole number above `tooFew` that suffices, if all larger ones suffice as well. */
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
