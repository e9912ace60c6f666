// Finds where a quantity crosses zero between two points, by halving: slow, but it cannot miss.
import { invariant } from "#foundation/invariant.ts";

/** Enough to use up the digits of a double, whatever the bracket. */
const HALVINGS = 60;

/**
 * The point between two ends at which a difference changes its sign.
 *
 *     each halving keeps the half at whose ends the signs differ
 *
 * Units: those of the ends.
 * Shape: lies between the ends, within 2^-60 of their distance.
 * Holds for: a difference with unlike signs at the ends; with several crossings it finds one of them.
 * Source: Press et al., Numerical Recipes, 3rd ed., 2007, section 9.1 (from memory)
 * Throws: BrokenInvariant where the signs at the ends are alike.
 *
 * @example
 * rootBetween((x) => x * x - 2, 0, 2) // 1.4142135624
 */
export function rootBetween(difference: (at: number) => number, low: number, high: number): number {
  const risesToHigh = difference(high) > 0;
  invariant(difference(low) > 0 !== risesToHigh, "a difference changes its sign between the ends", { low, high });
  let [below, above] = [low, high];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (below + above) / 2;
    if (difference(middle) > 0 === risesToHigh) above = middle;
    else below = middle;
  }
  return (below + above) / 2;
}
