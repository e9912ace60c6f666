// The confidence interval of a mean from independent replications.
import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { mean, sampleStandardDeviation } from "simple-statistics";
import { invariant } from "#foundation/invariant.ts";

export const CONFIDENCE = 0.95;

export interface Interval {
  readonly count: number;
  readonly mean: number;
  /** With n - 1; null where there is only one value. */
  readonly sd: number | null;
  /** The mean lies within mean ± halfWidth; null, not 0, where there is only one value. */
  readonly halfWidth: number | null;
  readonly confidence: number;
}

/** A spread below this part of the values comes from rounding, not from random numbers. */
export const ROUNDING = 1e-13;

/**
 * Student's t interval: halfWidth = t(1 - (1 - confidence)/2, n - 1) × sd / √n.
 * Source: Law, Simulation Modeling and Analysis, eq. 4.12 (from memory).
 */
export function meanInterval(values: readonly number[], confidence: number = CONFIDENCE): Interval {
  invariant(values.length > 0, "an interval needs a value");
  const sample = values.slice();
  const count = sample.length;
  const spread = count > 1 ? sampleStandardDeviation(sample) : null;
  const sd = spread !== null && spread <= ROUNDING * Math.abs(mean(sample)) ? 0 : spread;
  const halfWidth = sd === null ? null : tFactor(confidence, count) * (sd / Math.sqrt(count));
  return { count, mean: mean(sample), sd, halfWidth, confidence };
}

/** Half width of a two-sided interval from `count` values, in standard errors. */
export function tFactor(confidence: number, count: number): number {
  return tQuantile(1 - (1 - confidence) / 2, count - 1);
}

/** The interval with a standard error of the mean that its values do not show. */
export function widened(interval: Interval, unseen: number): Interval {
  const { halfWidth, count, confidence } = interval;
  if (halfWidth === null || unseen === 0) return interval;
  const more = tFactor(confidence, count) * unseen;
  return { ...interval, halfWidth: Math.sqrt(halfWidth * halfWidth + more * more) };
}
