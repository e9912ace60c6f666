// Exact points of a quantile as a curve over the normal score: bent so little there that few of them give all others.
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { CURVE_REACH, POINTS_A_SCORE } from "#core/border/numbers.ts";

/** Φ of the scores of the exact points. */
let chances: Float64Array | undefined;

/**
 * Values of a law at normal scores z = -4.5 to 4.5 in steps of 1/4, Φ(z) = p.
 *
 * A library's gamma quantile takes microseconds, and a table needs thousands. Between 37 of them Newton's interpolation through the
 * ten nearest is within 1e-8 standard deviations of the law up to a coefficient of variation of 1, within 1e-7 up to 1.4 and within
 * 1e-4 of any law that a step may follow, for |z| up to 3.5 (measured by tests/unit/engine/quantileTable.test.ts).
 */
export function curvePoints(quantile: (p: number) => number): Float64Array {
  chances ??= Float64Array.from({ length: 2 * CURVE_REACH + 1 }, (_, i) =>
    normalCdf((i - CURVE_REACH) / POINTS_A_SCORE, 0, 1),
  );
  return chances.map(quantile);
}
