// The confidence interval of a chance from independent runs.
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { invariant } from "#foundation/invariant.ts";
import { CONFIDENCE } from "./interval.ts";

export interface ChanceInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * The chances p for which |k/n − p| ≤ z √(p (1 − p)/n): center (k + z²/2)/(n + z²), half width z √(k (n − k)/n + z²/4)/(n + z²).
 *
 * Shape: 0 ≤ k ≤ n, n above 0. Errors: none. Valid for independent runs of one chance.
 * Source: Wilson, Journal of the American Statistical Association 22 (1927) 209 (from memory).
 */
export function wilsonInterval(successes: number, runs: number, confidence: number = CONFIDENCE): ChanceInterval {
  invariant(runs > 0 && successes >= 0 && successes <= runs, "a chance needs runs", { successes, runs });
  const z = normalQuantile(1 - (1 - confidence) / 2, 0, 1);
  const center = successes + (z * z) / 2;
  const half = z * Math.sqrt((successes * (runs - successes)) / runs + (z * z) / 4);
  const divisor = runs + z * z;
  return { low: Math.max(0, (center - half) / divisor), high: Math.min(1, (center + half) / divisor) };
}
