// Mean and quantile of a distribution as it is sampled: a normal draw below 0 counts as 0.
import exp from "@stdlib/math-base-special-exp";
import gamma from "@stdlib/math-base-special-gamma";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import type { Distribution } from "./distribution.ts";
import { standardizedDistribution, standardQuantile } from "./standardizedDistribution.ts";

const SQRT_TWO_PI = 2.5066282746310002;

/** Mean in the unit of the distribution. */
export function distributionMean(distribution: Distribution): number {
  switch (distribution.kind) {
    case "fixed":
      return distribution.value;
    case "uniform":
      return (distribution.min + distribution.max) / 2;
    case "triangular":
      return (distribution.min + distribution.mode + distribution.max) / 3;
    case "normal":
      return clampedNormalMean(distribution.mean, distribution.sd);
    case "lognormal":
    case "gamma":
    case "exponential":
      return distribution.mean;
    case "weibull":
      return distribution.scale * gamma(1 + 1 / distribution.shape);
    case "empirical":
      return distribution.values.reduce((sum, value) => sum + value, 0) / distribution.values.length;
  }
}

/** By probability p in [0, 1]: the value that a draw does not exceed; infinite at 1 where there is no largest value. */
export function distributionQuantile(distribution: Distribution): (p: number) => number {
  if (distribution.kind === "empirical") {
    const sorted = distribution.values.toSorted((a, b) => a - b);
    return (p) => Math.max(0, sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))]!);
  }
  const { form, location, scale } = standardizedDistribution(distribution);
  return (p) => (scale === 0 ? location : Math.max(0, location + scale * standardQuantile(form, p)));
}

/**
 * Mean of max(0, X), X normal: with a = mean / sd, mean × Φ(a) + sd × φ(a).
 * Source: Greene, Econometric Analysis, theorem on the moments of the censored normal variable (from memory; derived
 * by integration by parts).
 */
function clampedNormalMean(mean: number, sd: number): number {
  // Less than 1e-19 lies below 0: the closed form would only lose digits.
  if (mean > 9 * sd) return mean;
  if (sd === 0) return 0;
  const a = mean / sd;
  return mean * normalCdf(a, 0, 1) + sd * (exp((-a * a) / 2) / SQRT_TWO_PI);
}
