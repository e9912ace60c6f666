// Standard deviation of a distribution as it is sampled: a normal draw below 0 counts as 0.
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import triangularStdev from "@stdlib/stats-base-dists-triangular-stdev";
import weibullStdev from "@stdlib/stats-base-dists-weibull-stdev";
import { standardDeviation } from "simple-statistics";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { distributionMean } from "#engine/distributions/moments.ts";

/** In the unit of the distribution; of measured values that of a whole population. */
export function distributionSd(distribution: Distribution): number {
  switch (distribution.kind) {
    case "fixed":
      return 0;
    case "uniform":
      return (distribution.max - distribution.min) / Math.sqrt(12);
    case "triangular":
      return triangularStdev(distribution.min, distribution.max, distribution.mode);
    case "normal":
      return clampedNormalSd(distribution.mean, distribution.sd);
    case "lognormal":
    case "gamma":
      return distribution.sd;
    case "exponential":
      return distribution.mean;
    case "weibull":
      return weibullStdev(distribution.shape, distribution.scale);
    case "empirical":
      return standardDeviation([...distribution.values]);
  }
}

/**
 * Of max(0, X), X normal: E max(0, X)² = (mean² + sd²) × Φ(a) + mean × sd × φ(a) with a = mean / sd.
 * Source: Greene, Econometric Analysis, theorem on the moments of the censored normal variable [M+C].
 */
function clampedNormalSd(mean: number, sd: number): number {
  const a = mean / sd;
  if (a > 9) return sd;
  const density = Math.exp((-a * a) / 2) / Math.sqrt(2 * Math.PI);
  const square = (mean * mean + sd * sd) * normalCdf(a, 0, 1) + mean * sd * density;
  return Math.sqrt(square - distributionMean({ kind: "normal", mean, sd }) ** 2);
}
