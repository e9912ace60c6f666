// The gamma family by mean and standard deviation.
import digamma from "@stdlib/math-base-special-digamma";
import exp from "@stdlib/math-base-special-exp";
import gammainc from "@stdlib/math-base-special-gammainc";
import gammaln from "@stdlib/math-base-special-gammaln";
import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";
import pow from "@stdlib/math-base-special-pow";
import trigamma from "@stdlib/math-base-special-trigamma";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import type { Family } from "./family.ts";
import { logPivot } from "./plainFamilies.ts";

const standardNormal = normalCdf.factory(0, 1);
const standardQuantile = normalQuantile.factory(0, 1);

/** From here on the difference of two nearly equal terms is replaced by its series. */
const LARGE_SHAPE = 100;
/** From here on the library's incomplete gamma function loses digits, and the distribution is nearly normal. */
const NEARLY_NORMAL = 500;

export const gamma: Family = {
  kind: "gamma",
  parameters: ["mean", "sd"],
  fit: (sorted) => {
    if (!(sorted[0]! > 0)) return undefined;
    const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
    // Logarithm of the mean minus mean of the logarithms, without loss of digits for a small spread.
    const gap = -sorted.reduce((sum, value) => sum + log1p((value - mean) / mean), 0) / sorted.length;
    return gap > 0 ? [mean, mean / Math.sqrt(shapeOf(gap))] : undefined;
  },
  logDensity: ([mean = 0, sd = 0]) => {
    const shape = (mean / sd) * (mean / sd);
    const scale = mean / shape;
    const constant = -gammaln(shape) - shape * ln(scale);
    return (value) => constant + (shape - 1) * ln(value) - value / scale;
  },
  probability: ([mean = 0, sd = 0]) => {
    const shape = (mean / sd) * (mean / sd);
    if (shape < NEARLY_NORMAL) return (value) => (value > 0 ? gammainc((value / mean) * shape, shape) : 0);
    // Source: Wilson and Hilferty, Proceedings of the National Academy of Sciences 17 (1931) 684 [M].
    const spread = Math.sqrt(1 / (9 * shape));
    return (value) => (value > 0 ? standardNormal((pow(value / mean, 1 / 3) - 1) / spread + spread) : 0);
  },
  sampler: ([mean = 0, sd = 0], draw) => gammaSampler((mean / sd) * (mean / sd), mean, draw),
  pivots: ([mean = 0, sd = 0]) => [logPivot(mean, sd / mean), logPivot(sd)],
  distribution: ([mean = 0, sd = 0]) => ({ kind: "gamma", mean, sd }),
};

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
