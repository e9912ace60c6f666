// A quantile as a curve over the normal score: it bends so little there that a few exact points give all others.
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";

/** Exact points in one standard deviation of the normal distribution. */
const POINTS_A_SCORE = 4;
/** Exact points on either side of the median: up to a score of 4.5. */
const REACH = 18;
/** Exact points through which each piece of the curve runs. */
const ORDER = 10;

/** Φ of the scores of the exact points. */
let chances: Float64Array | undefined;

/**
 * The value at a normal score z, Φ(z) = p, by Newton's interpolation through the ten nearest of 37 exact points.
 *
 * A library's gamma quantile takes microseconds, and a table needs thousands. The curve is within 1e-8 standard deviations of the
 * exact quantile up to a coefficient of variation of 1, within 1e-7 up to 1.4 and within 1e-4 for every distribution that a step may
 * follow, for |z| up to 3.5 (measured by tests/unit/engine/quantileTable.test.ts).
 */
export function scoreCurve(quantile: (p: number) => number): (score: number) => number {
  chances ??= Float64Array.from({ length: 2 * REACH + 1 }, (_, i) => normalCdf((i - REACH) / POINTS_A_SCORE, 0, 1));
  const points = chances.map(quantile);
  // Scores come in order: a piece serves many of them.
  let begin = -1;
  let piece = polynomial(points);
  return (score) => {
    const place = score * POINTS_A_SCORE + REACH;
    const first = Math.floor(place) - ORDER / 2 + 1;
    if (first !== begin) {
      begin = first;
      piece = polynomial(points.subarray(first, first + ORDER));
    }
    return piece(place - first);
  };
}

/** Newton's divided differences, through points at x = 0, 1, 2 and so on. */
function polynomial(points: Float64Array): (x: number) => number {
  const terms = points.slice(0, ORDER);
  for (let span = 1; span < ORDER; span++)
    for (let i = ORDER - 1; i >= span; i--) terms[i] = (terms[i]! - terms[i - 1]!) / span;
  return (x) => {
    let value = 0;
    for (let i = ORDER - 1; i >= 0; i--) value = value * (x - i) + terms[i]!;
    return value;
  };
}
