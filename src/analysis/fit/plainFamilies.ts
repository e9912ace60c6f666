// The families whose maximum likelihood has a closed form: uniform, normal, lognormal, exponential.
import exp from "@stdlib/math-base-special-exp";
import expm1 from "@stdlib/math-base-special-expm1";
import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { linear, type Family, type Pivot } from "./family.ts";

const HALF_LN_TWO_PI = 0.9189385332046727;
const standardNormal = normalCdf.factory(0, 1);
const standardQuantile = normalQuantile.factory(0, 1);

export const logPivot = (parameter: number, scale = 1): Pivot => ({ at: ln(parameter), scale, isLog: true });

export const uniform: Family = {
  kind: "uniform",
  parameters: ["min", "max"],
  isFast: true,
  fit: (sorted) => [sorted[0]!, sorted.at(-1)!],
  logDensity: ([min = 0, max = 0]) => {
    const inside = -ln(max - min);
    return (value) => (value >= min && value <= max ? inside : -Infinity);
  },
  probability:
    ([min = 0, max = 0]) =>
    (value) =>
      Math.min(1, Math.max(0, (value - min) / (max - min))),
  sampler:
    ([min = 0, max = 0], draw) =>
    () =>
      min + (max - min) * draw(),
  pivots: ([min = 0, max = 0]) => [linear(min, max - min), linear(max, max - min)],
  distribution: ([min = 0, max = 0]) => ({ kind: "uniform", min, max }),
};

export const normal: Family = {
  kind: "normal",
  parameters: ["mean", "sd"],
  fit: (sorted) => momentsOf(sorted),
  logDensity: ([mean = 0, sd = 0]) => {
    const constant = -ln(sd) - HALF_LN_TWO_PI;
    return (value) => constant - (((value - mean) / sd) * ((value - mean) / sd)) / 2;
  },
  probability:
    ([mean = 0, sd = 0]) =>
    (value) =>
      standardNormal((value - mean) / sd),
  sampler:
    ([mean = 0, sd = 0], draw) =>
    () =>
      mean + sd * standardQuantile(draw()),
  pivots: ([mean = 0, sd = 0]) => [linear(mean, sd), logPivot(sd)],
  distribution: ([mean = 0, sd = 0]) => ({ kind: "normal", mean, sd }),
};

/** Mean and standard deviation of the quantity from those of its logarithm. */
export function lognormalOf([mu = 0, sigma = 0]: readonly number[]): readonly number[] {
  const mean = exp(mu + (sigma * sigma) / 2);
  return [mean, mean * Math.sqrt(expm1(sigma * sigma))];
}

/** Mean and standard deviation of the logarithm. */
export function logMoments([mean = 0, sd = 0]: readonly number[]): readonly [mu: number, sigma: number] {
  const variance = log1p((sd / mean) * (sd / mean));
  return [ln(mean) - variance / 2, Math.sqrt(variance)];
}

export const lognormal: Family = {
  kind: "lognormal",
  parameters: ["mean", "sd"],
  fit: (sorted) => (sorted[0]! > 0 ? lognormalOf(momentsOf(sorted.map((value) => ln(value)))) : undefined),
  logDensity: (parameters) => {
    const [mu, sigma] = logMoments(parameters);
    const constant = -ln(sigma) - HALF_LN_TWO_PI;
    return (value) => {
      const z = (ln(value) - mu) / sigma;
      return constant - ln(value) - (z * z) / 2;
    };
  },
  probability: (parameters) => {
    const [mu, sigma] = logMoments(parameters);
    return (value) => (value > 0 ? standardNormal((ln(value) - mu) / sigma) : 0);
  },
  sampler: (parameters, draw) => {
    const [mu, sigma] = logMoments(parameters);
    return () => exp(mu + sigma * standardQuantile(draw()));
  },
  pivots: ([mean = 0, sd = 0]) => [logPivot(mean, sd / mean), logPivot(sd)],
  distribution: ([mean = 0, sd = 0]) => ({ kind: "lognormal", mean, sd }),
};

export const exponential: Family = {
  kind: "exponential",
  parameters: ["mean"],
  fit: (sorted) => (sorted[0]! > 0 ? [momentsOf(sorted)[0]] : undefined),
  logDensity: ([mean = 0]) => {
    const constant = -ln(mean);
    return (value) => constant - value / mean;
  },
  probability:
    ([mean = 0]) =>
    (value) =>
      -expm1(-Math.max(0, value) / mean),
  sampler:
    ([mean = 0], draw) =>
    () =>
      -mean * log1p(-draw()),
  pivots: ([mean = 0]) => [logPivot(mean)],
  distribution: ([mean = 0]) => ({ kind: "exponential", mean }),
};

/** Mean, and standard deviation with n in the denominator, as the likelihood has it. */
export function momentsOf(values: Float64Array): readonly [mean: number, sd: number] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  return [mean, Math.sqrt(squares / values.length)];
}
