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

export function scoreCurve(quantile: (p: number) => number): (score: number) => number {
  chances ??= Float64Array.from({ length: 2 * REACH + 1 }, (_, i) => normalCdf((i - REACH) / POINTS_A_SCORE, 0, 1));
  const points = chances.map(quantile);
  let begin = -1;
  let piece = polynomial(points.subarray(0, ORDER));
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

/** Newton's interpolation through points at 0, 1, 2 and so on. */
function polynomial(points: Float64Array): (x: number) => number {
  const c = points.slice();
  for (let span = 1; span < ORDER; span++) for (let i = ORDER - 1; i >= span; i--) c[i] = (c[i]! - c[i - 1]!) / span;
  const [c0, c1, c2, c3, c4, c5, c6, c7, c8, c9] = c as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return (x) =>
    ((((((((c9 * (x - 8) + c8) * (x - 7) + c7) * (x - 6) + c6) * (x - 5) + c5) * (x - 4) + c4) * (x - 3) + c3) *
      (x - 2) +
      c2) *
      (x - 1) +
      c1) *
      x +
    c0;
}
