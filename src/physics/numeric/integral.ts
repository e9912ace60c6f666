// The numerical integral of a curve without a simple closed form.

const TOLERANCE = 1e-11;
/** Share of a sum that is rounding error. */
const NOISE = 1e-13;
/** Ends a curve without an integral as well, after half a million points. */
const DEPTH = 18;

type Curve = (at: number) => number;

/**
 * The integral of a curve by Simpson's rule, with halved intervals where two halves differ from the whole.
 *
 *     ∫ f dx ≈ (b − a)/6 · [f(a) + 4 f((a + b)/2) + f(b)], refined until the halves agree
 *
 * Units: curve times interval.
 * Shape: relative error about 1e-11 of the whole; 0 where the ends coincide.
 * Holds for: curves that are finite from end to end.
 * Source: Lyness, Notes on the adaptive Simpson quadrature routine, Journal of the ACM 16, 1969, p. 483 (from memory)
 * Throws: nothing.
 *
 * @example
 * integral((x) => 1 / x, 1, 2) // 0.6931471806
 */
export function integral(curve: Curve, from: number, to: number): number {
  const middle = curve((from + to) / 2);
  const ends: Ends = { from, to, first: curve(from), middle, last: curve(to) };
  const whole = simpson(ends);
  return refined(curve, ends, whole, TOLERANCE * Math.abs(whole), DEPTH);
}

interface Ends {
  readonly from: number;
  readonly to: number;
  readonly first: number;
  readonly middle: number;
  readonly last: number;
}

function simpson({ from, to, first, middle, last }: Ends): number {
  return ((to - from) / 6) * (first + 4 * middle + last);
}

function refined(curve: Curve, ends: Ends, whole: number, tolerance: number, depth: number): number {
  const { from, to, first, middle, last } = ends;
  const center = (from + to) / 2;
  const left: Ends = { from, to: center, first, middle: curve((from + center) / 2), last: middle };
  const right: Ends = { from: center, to, first: middle, middle: curve((center + to) / 2), last };
  const [leftSum, rightSum] = [simpson(left), simpson(right)];
  const excess = leftSum + rightSum - whole;
  const allowed = Math.max(15 * tolerance, NOISE * Math.abs(leftSum + rightSum));
  // The error of the halves is about a fifteenth of the change. A negated comparison ends for NaN as well.
  if (depth === 0 || !(Math.abs(excess) > allowed)) return leftSum + rightSum + excess / 15;
  return (
    refined(curve, left, leftSum, tolerance / 2, depth - 1) + refined(curve, right, rightSum, tolerance / 2, depth - 1)
  );
}
