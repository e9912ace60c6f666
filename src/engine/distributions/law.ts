// Mean, standard deviation and quantile of a law as it is sampled: a normal draw below 0 counts as 0.
import exp from "@stdlib/math-base-special-exp";
import gamma from "@stdlib/math-base-special-gamma";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import type { Distribution } from "./distribution.ts";
import { standardLaw, standardQuantile } from "./standardLaw.ts";

const SQRT_TWO_PI = 2.5066282746310002;

/** Mean in the unit of the law. */
export function lawMean(law: Distribution): number {
  switch (law.kind) {
    case "fixed":
      return law.value;
    case "uniform":
      return (law.min + law.max) / 2;
    case "triangular":
      return (law.min + law.mode + law.max) / 3;
    case "normal":
      return clampedNormal(law.mean, law.sd).mean;
    case "lognormal":
    case "gamma":
    case "exponential":
      return law.mean;
    case "weibull":
      return law.scale * gamma(1 + 1 / law.shape);
    case "empirical":
      return average(law.values);
  }
}

/** Standard deviation in the unit of the law; of an empirical law that of its values as a whole population. */
export function lawSd(law: Distribution): number {
  switch (law.kind) {
    case "fixed":
      return 0;
    case "uniform":
      return (law.max - law.min) / Math.sqrt(12);
    case "triangular":
      return triangularSd(law.mode - law.min, law.max - law.mode);
    case "normal":
      return clampedNormal(law.mean, law.sd).sd;
    case "lognormal":
    case "gamma":
      return law.sd;
    case "exponential":
      return law.mean;
    case "weibull":
      return law.scale * weibullSd(law.shape);
    case "empirical":
      return populationSd(law.values);
  }
}

/** The value that a draw does not exceed with probability p in [0, 1]; infinite at 1 where the law has no largest value. */
export function lawQuantile(law: Distribution, p: number): number {
  if (law.kind === "empirical") {
    const sorted = law.values.toSorted((a, b) => a - b);
    return Math.max(0, sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))] ?? 0);
  }
  const { form, location, scale } = standardLaw(law);
  return scale === 0 ? location : Math.max(0, location + scale * standardQuantile(form, p));
}

/**
 * Moments of max(0, X), X normal: with a = mean / sd, mean × Φ(a) + sd × φ(a) and (mean² + sd²) × Φ(a) + mean × sd × φ(a).
 * Source: Greene, Econometric Analysis, theorem on the moments of the censored normal variable (from memory; derived
 * by integration by parts).
 */
function clampedNormal(mean: number, sd: number): { readonly mean: number; readonly sd: number } {
  // Below 0 lies less than 1e-19: the closed form would only lose digits.
  if (mean > 9 * sd) return { mean, sd };
  if (sd === 0) return { mean: 0, sd: 0 };
  const a = mean / sd;
  const above = normalCdf(a, 0, 1);
  const density = exp((-a * a) / 2) / SQRT_TWO_PI;
  const clampedMean = mean * above + sd * density;
  const square = (mean * mean + sd * sd) * above + mean * sd * density;
  return { mean: clampedMean, sd: Math.sqrt(Math.max(0, square - clampedMean * clampedMean)) };
}

/** With left and right the distances of the mode from the ends. */
function triangularSd(left: number, right: number): number {
  return Math.sqrt((left * left + left * right + right * right) / 18);
}

function weibullSd(shape: number): number {
  const mean = gamma(1 + 1 / shape);
  return Math.sqrt(Math.max(0, gamma(1 + 2 / shape) - mean * mean));
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function populationSd(values: readonly number[]): number {
  const mean = average(values);
  return Math.sqrt(average(values.map((value) => (value - mean) * (value - mean))));
}
