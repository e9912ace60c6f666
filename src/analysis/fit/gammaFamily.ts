// The gamma family by mean and standard deviation.
import digamma from "@stdlib/math-base-special-digamma";
import exp from "@stdlib/math-base-special-exp";
import gammainc from "@stdlib/math-base-special-gammainc";
import gammaln from "@stdlib/math-base-special-gammaln";
import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";
import trigamma from "@stdlib/math-base-special-trigamma";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import type { Family } from "./family.ts";
import { narrowLogDensity, narrowProbability } from "./narrowGamma.ts";
import { logPivot } from "./plainFamilies.ts";

const standardQuantile = normalQuantile.factory(0, 1);

/** From here on the difference of nearly equal terms is replaced by its series. */
const LARGE_SHAPE = 100;
/** From here on the library's incomplete gamma function may be wrong (by 0.014 at shape 2500). */
const NARROW_SHAPE = 500;

export const gamma: Family = {
  kind: "gamma",
  parameters: ["mean", "sd"],
  fit: (sorted) => {
    if (!(sorted[0]! > 0)) return undefined;
    const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
    // Logarithm of the mean minus mean of the logarithms. With the deviations themselves, a rounded mean does no harm.
    const gap = sorted.reduce((sum, value) => sum + gapAt((value - mean) / mean), 0) / sorted.length;
    return gap > 0 ? [mean, mean / Math.sqrt(shapeOf(gap))] : undefined;
  },
  logDensity: ([mean = 0, sd = 0]) => {
    const shape = (mean / sd) * (mean / sd);
    if (shape >= LARGE_SHAPE) return narrowLogDensity(shape, mean);
    const scale = mean / shape;
    const constant = -gammaln(shape) - shape * ln(scale);
    return (value) => constant + (shape - 1) * ln(value) - value / scale;
  },
  probability: ([mean = 0, sd = 0]) => {
    const shape = (mean / sd) * (mean / sd);
    if (shape >= NARROW_SHAPE) return narrowProbability(shape, mean);
    return (value) => (value > 0 ? gammainc((value / mean) * shape, shape) : 0);
  },
  sampler: ([mean = 0, sd = 0], draw) => gammaSampler((mean / sd) * (mean / sd), mean, draw),
  pivots: ([mean = 0, sd = 0]) => [logPivot(mean, sd / mean), logPivot(sd)],
  distribution: ([mean = 0, sd = 0]) => ({ kind: "gamma", mean, sd }),
};

const gapAt = (away: number): number => away - log1p(away);

/** The root of ln k − ψ(k) = gap by Newton's method from a start within 1.5 %. Source of the start: Minka (2002) [M]. */
function shapeOf(gap: number): number {
  let shape = (3 - gap + Math.sqrt((gap - 3) * (gap - 3) + 24 * gap)) / (12 * gap);
  for (let i = 0; i < 20; i++) {
    const [value, slope] = gapOf(shape);
    const next = shape - (value - gap) / slope;
    const step = Math.abs(next - shape);
    shape = next > 0 ? next : shape / 2;
    if (step <= 1e-13 * shape) break;
  }
  return shape;
}

/** ln k − ψ(k), and its slope. */
function gapOf(shape: number): readonly [value: number, slope: number] {
  if (shape < LARGE_SHAPE) return [ln(shape) - digamma(shape), 1 / shape - trigamma(shape)];
  const inverse = 1 / shape;
  const square = inverse * inverse;
  return [
    inverse / 2 + square / 12 - (square * square) / 120 + (square * square * square) / 252,
    -square / 2 - (square * inverse) / 6 + (square * square * inverse) / 30,
  ];
}

/** Source: Marsaglia and Tsang, ACM Transactions on Mathematical Software 26 (2000) 363 [M]. */
function gammaSampler(shape: number, mean: number, draw: () => number): () => number {
  const larger = shape < 1 ? shape + 1 : shape;
  const d = larger - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  const next = (): number => {
    for (;;) {
      const z = standardQuantile(draw());
      const root = 1 + c * z;
      const cube = root * root * root;
      if (cube > 0 && ln(draw()) < (z * z) / 2 + d - d * cube + d * ln(cube)) return (d * cube * mean) / shape;
    }
  };
  return shape < 1 ? () => next() * exp(ln(draw()) / shape) : next;
}
