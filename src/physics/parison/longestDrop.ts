// The longest drop time at which the sag stays within its limit.
import { deliveredSag, type Hanging } from "./deliveredSag.ts";
import { rootBetween } from "#physics/numeric/rootBetween.ts";
import type { HangingMelt } from "./sagConstant.ts";

/** Upper limit of a drop time, s. */
const LONGEST = 600;

/**
 * The drop time at which the sag just reaches its limit; with shortestDrop it bounds the window of the drop.
 *
 *     the t_d for which deliveredSag(L₀, t_d, t_h) = limit
 *
 * Units: s.
 * Shape: shorter for a longer parison and a longer hold. 0 where the hold alone sags too much, at most 600 s.
 * Holds for: what deliveredSag holds for.
 * Source: Derived here as the inverse of deliveredSag, after Trouton, Proceedings of the Royal Society A 77, 1906, p. 426
 * Throws: nothing.
 *
 * @example
 * longestDrop({ meltDensity: 760, zeroShearViscosity: 20000 }, { length: 0.30, hold: 0.7 }, 0.0249108) // 1.8000
 */
export function longestDrop(melt: HangingMelt, hanging: Omit<Hanging, "delivery">, sagLimit: number): number {
  const excess = (delivery: number) => deliveredSag(melt, { ...hanging, delivery }) - sagLimit;
  if (excess(0) >= 0) return 0;
  return excess(LONGEST) <= 0 ? LONGEST : rootBetween(excess, 0, LONGEST);
}
