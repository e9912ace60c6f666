// Finds a zero between two points by Ridders' method, which always converges.
import { invariant } from "#foundation/invariant.ts";

/** Enough for all digits of a double by halving alone; Ridders' method needs about six. */
const ROUNDS = 60;
/** Relative distance of two adjacent doubles. */
const NEIGHBOR = 1 / 4503599627370496;

interface Point {
  readonly at: number;
  readonly value: number;
}

/**
 * The point between two ends at which a difference changes its sign.
 *
 *     m halves the bracket l … h;  x = m ± (m − l) f(m) / √(f(m)² − f(l) f(h)),  + where f falls
 *     the smallest bracket that m and x leave is the next
 *
 * Units: those of the ends.
 * Shape: between the ends, within 2^-50 of itself or 2^-60 of their distance.
 * Holds for: a difference with unlike signs at the ends; with several crossings it finds one of them.
 * Source: Ridders, IEEE Transactions on Circuits and Systems 26, 1979, p. 979 (from memory)
 * Throws: BrokenInvariant where the signs at the ends are equal.
 *
 * @example
 * rootBetween((x) => x * x - 2, 0, 2) // 1.4142135624
 */
export function rootBetween(difference: (at: number) => number, low: number, high: number): number {
  const point = (at: number): Point => ({ at, value: difference(at) });
  let [below, above] = [point(low), point(high)];
  const risesToHigh = above.value > 0;
  invariant(below.value > 0 !== risesToHigh, "a difference changes its sign between the ends", { low, high });
  let last = Infinity;
  for (let round = 0; round < ROUNDS && above.at - below.at > 4 * NEIGHBOR * Math.abs(above.at); round += 1) {
    const middle = point((below.at + above.at) / 2);
    const at = riddersPoint(below, middle, above);
    const near = 2 * NEIGHBOR * Math.abs(at);
    // Two equal points are mostly the root, which then is between their neighbors. At a jump they may be anywhere.
    const neighbors = Math.abs(at - last) <= near ? [at - near, at + near] : [];
    last = at;
    for (const next of [middle, ...[at, ...neighbors].map(point)]) {
      if (next.at <= below.at || next.at >= above.at) continue;
      if (next.value > 0 === risesToHigh) above = next;
      else below = next;
    }
  }
  return (below.at + above.at) / 2;
}

/** The zero of the line through the three values after division by an exponential; the middle where all are 0. */
function riddersPoint(below: Point, middle: Point, above: Point): number {
  const span = Math.sqrt(middle.value * middle.value - below.value * above.value);
  const step = ((middle.at - below.at) * middle.value) / span;
  return Number.isFinite(step) ? middle.at + (below.value > above.value ? step : -step) : middle.at;
}
