// The sag in one line, for display and for the hand.
import type { Hanging } from "./deliveredSag.ts";
import { sagConstant, type HangingMelt } from "./sagConstant.ts";

/**
 * Share by which a parison sags, to first order.
 *
 *     ΔL/L₀ ≈ K L₀ (t_d/6 + t_h/2),   K = ρ g/(3 η₀)
 *
 * Units: L₀ in m, times in s; the sag is a share of L₀.
 * Shape: proportional to length and time. Stress of the whole length at the top would give 2 times too much when hung, 6
 * times when delivered.
 * Holds for: sags of a few percent; below the exact value, by 3 % of itself at a sag of 2.5 %.
 * Source: Derived here as the first term of deliveredSag, after Trouton, Proceedings of the Royal Society A 77, 1906, p. 426
 * Throws: nothing.
 *
 * @example
 * firstOrderSag({ meltDensity: 760, zeroShearViscosity: 20000 }, { length: 0.30, delivery: 1.8, hold: 0.7 }) // 0.02422
 */
export function firstOrderSag(melt: HangingMelt, { length, delivery, hold }: Hanging): number {
  return sagConstant(melt) * length * (delivery / 6 + hold / 2);
}
