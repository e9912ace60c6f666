// A quantile as a curve over the normal score: bent so little there that few exact points give all others.
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";

/** Distance of two exact points, in standard deviations of the normal law. */
const STEP = 1 / 4;
/** Exact points on either side of the median: up to a score of 4.5. */
const REACH = 18;
/** Exact points through which each piece of the curve runs. */
const ORDER = 10;

/** Φ of the scores of the exact points. */
let chances: Float64Array | undefined;

/**
 * Value of a law over the normal score z of its probability, Φ(z) = p, for |z| up to 3.5.
 *
 * A library's gamma quantile takes microseconds, and a table needs thousands. Between 37 of them Newton's interpolation through the
 * ten nearest is within 1e-8 standard deviations of the law up to a coefficient of variation of 1, within 1e-7 up to 1.4 and within
 * 1e-4 of any law that a step may follow (measured by tests/unit/engine/quantileTable.test.ts). Scores asked for one after the
 * other should be neighbors.
 */
export function scoreCurve(quantile: (p: number) => number): (score: number) => number {
  chances ??= Float64Array.from({ length: 2 * REACH + 1 }, (_, i) => normalCdf((i - REACH) * STEP, 0, 1));
  const points = chances.map(quantile);
  const piece = new Float64Array(ORDER);
  let begin = -1;
  return (score) => {
    const place = score / STEP + REACH;
    const first = Math.floor(place) - ORDER / 2 + 1;
    if (first !== begin) {
      begin = first;
      setDifferences(piece, points, first);
    }
    const along = place - first;
    let value = 0;
    for (let i = ORDER - 1; i >= 0; i--) value = value * (along - i) + piece[i]!;
    return value;
  };
}

/** Newton's divided differences of points at 0, 1, 2 and so on. */
function setDifferences(piece: Float64Array, points: Float64Array, first: number): void {
  for (let i = 0; i < ORDER; i++) piece[i] = points[first + i]!;
  for (let span = 1; span < ORDER; span++)
    for (let i = ORDER - 1; i >= span; i--) piece[i] = (piece[i]! - piece[i - 1]!) / span;
}
