// Probability and density of a gamma distribution with a small spread, where the usual formulas subtract large numbers.
import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";

const standardNormal = normalCdf.factory(0, 1);
const TWO_PI = 6.283185307179586;

/**
 * The coefficients C0, C1 and C2 as series of eta. They follow from eta²/2 = u - 1 - ln u, C0 = 1/(u - 1) - 1/eta and
 * eta C(k) = C'(k - 1) - C'(k - 1)(0) eta/(u - 1), in fractions.
 */
const coefficients = [
  [-1 / 3, 1 / 12, -2 / 135, 1 / 864, 1 / 2835, -139 / 777_600, 1 / 25_515, -571 / 261_273_600, -281 / 151_559_100],
  [-1 / 540, -1 / 288, 1 / 378, -77 / 77_760, 1 / 4860, -1 / 2_488_320],
  [25 / 6048, -139 / 51_840, 1 / 1296, 1 / 497_664],
] as const;

const polynomial = (terms: readonly number[], x: number): number => terms.reduceRight((sum, term) => sum * x + term, 0);

/** u - 1 - ln u of u = 1 + away. */
const deviance = (away: number): number => Math.max(0, away - log1p(away));

/**
 * Probability that a value of this mean is not exceeded, for a shape of 500 and more: within 1e-12.
 * Source: Temme, SIAM Journal on Mathematical Analysis 10 (1979) 757 [M].
 */
export function narrowProbability(shape: number, mean: number): (value: number) => number {
  const factor = 1 / Math.sqrt(TWO_PI * shape);
  return (value) => {
    if (!(value > 0)) return 0;
    const away = (value - mean) / mean;
    const half = deviance(away);
    const eta = away < 0 ? -Math.sqrt(2 * half) : Math.sqrt(2 * half);
    const [first, second, third] = coefficients;
    const inverse = 1 / shape;
    const series = polynomial(first, eta) + inverse * (polynomial(second, eta) + inverse * polynomial(third, eta));
    const tail = exp(-shape * half);
    return standardNormal(eta * Math.sqrt(shape)) - (tail === 0 ? 0 : factor * tail * series);
  };
}

/** Logarithm of the density for a shape of 100 and more, with Stirling's series of the gamma function. */
export function narrowLogDensity(shape: number, mean: number): (value: number) => number {
  const square = shape * shape;
  const stirling = 1 / (12 * shape) - 1 / (360 * shape * square) + 1 / (1260 * shape * square * square);
  const constant = ln(shape / TWO_PI) / 2 - stirling;
  return (value) => constant - ln(value) - shape * deviance((value - mean) / mean);
}
