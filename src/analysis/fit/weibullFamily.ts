// The Weibull family by scale and shape, also from values of which some are only known to be longer.
import exp from "@stdlib/math-base-special-exp";
import expm1 from "@stdlib/math-base-special-expm1";
import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";
import type { Family } from "./family.ts";
import { logPivot, momentsOf } from "./plainFamilies.ts";

export const weibull: Family = {
  kind: "weibull",
  parameters: ["scale", "shape"],
  fit: (sorted) => fitWeibull(sorted),
  logDensity: ([scale = 0, shape = 0]) => {
    const [constant, lnScale] = [ln(shape), ln(scale)];
    return (value) => {
      const power = shape * (ln(value) - lnScale);
      return constant + power - ln(value) - exp(power);
    };
  },
  probability: ([scale = 0, shape = 0]) => {
    const lnScale = ln(scale);
    return (value) => (value > 0 ? -expm1(-exp(shape * (ln(value) - lnScale))) : 0);
  },
  sampler:
    ([scale = 0, shape = 0], draw) =>
    () =>
      scale * exp(ln(-log1p(-draw())) / shape),
  pivots: ([scale = 0, shape = 0]) => [logPivot(scale, 1 / shape), logPivot(shape)],
  distribution: ([scale = 0, shape = 0]) => ({ kind: "weibull", scale, shape }),
};

/**
 * Scale and shape by maximum likelihood; `censored` values are only known to be longer. The shape is the root of
 * Σ t^k ln t / Σ t^k − 1 / k = mean of ln t over complete values, which rises with k.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 8.4.1.
 */
export function fitWeibull(
  complete: Float64Array,
  censored: Float64Array = new Float64Array(0),
): readonly number[] | undefined {
  if (complete.length < 2 || !complete.every((value) => value > 0)) return undefined;
  const logs = complete.map((value) => ln(value));
  const all = new Float64Array(logs.length + censored.length);
  all.set(logs);
  all.set(
    censored.map((value) => ln(value)),
    logs.length,
  );
  const [mean, sd] = momentsOf(logs);
  if (!(sd > 0)) return undefined;
  const shape = shapeOf(all, mean, 1.28 / sd);
  const { sum, most } = powers(all, shape);
  return [exp(most + ln(sum / complete.length) / shape), shape];
}

/** Newton's method on the logarithm of the shape, kept between the bounds that earlier steps found. */
function shapeOf(all: Float64Array, mean: number, start: number): number {
  let [low, high] = [0, Infinity];
  let shape = start;
  for (let i = 0; i < 100; i++) {
    const { sum, first, second } = powers(all, shape);
    const value = first / sum - 1 / shape - mean;
    const slope = second / sum - (first / sum) * (first / sum) + 1 / (shape * shape);
    if (value > 0) high = shape;
    else low = shape;
    const step = shape - value / slope;
    const next = step > low && step < high ? step : high === Infinity ? shape * 2 : (low + high) / 2;
    if (Math.abs(next - shape) <= 1e-13 * shape) return next;
    shape = next;
  }
  return shape;
}

/** Σ (t / longest)^k, and the same with ln t and its square as factors. */
function powers(
  logs: Float64Array,
  shape: number,
): { readonly sum: number; readonly first: number; readonly second: number; readonly most: number } {
  const most = logs.reduce((longest, value) => Math.max(longest, value), -Infinity);
  let [sum, first, second] = [0, 0, 0];
  for (const value of logs) {
    const power = exp(shape * (value - most));
    sum += power;
    first += power * value;
    second += power * value * value;
  }
  return { sum, first, second, most };
}
