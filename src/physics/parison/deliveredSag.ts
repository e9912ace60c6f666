// The sag of a parison that is delivered steadily and then hangs until the mold closes.
import { integral } from "#physics/numeric/integral.ts";
import { sagConstant, type HangingMelt } from "./sagConstant.ts";

/** The length of a parison and the times that it hangs. */
export interface Hanging {
  /** Length without sag, m. */
  readonly length: number;
  /** Seconds from the first melt to the last. */
  readonly delivery: number;
  /** Seconds from the last melt to the closed mold. */
  readonly hold: number;
}

/**
 * Share by which a parison lengthens during a steady delivery and the hold after it.
 *
 *     L/L₀ = (1/t_d) ∫₀^t_d du / (1 − K L₀ (u/t_d)(t_d + t_h − u)),   K = ρ g/(3 η₀)
 *
 * Units: L₀ in m, times in s; the sag is a share of L₀.
 * Shape: rises with delivery and hold; a hold costs three times as much a second. With no delivery it is −ln(1 − K L₀ t_h)/(K L₀ t_h) − 1.
 * Infinity where the cross section of a slice goes to 0.
 * Holds for: a Newtonian melt. The slice that leaves the die at time u carries all melt that left before it.
 * Source: Derived here from the balance of weight and stress on a slice, after Trouton, Proceedings of the Royal Society A 77, 1906, p. 426
 * Throws: nothing.
 *
 * @example
 * deliveredSag({ meltDensity: 760, zeroShearViscosity: 20000 }, { length: 0.30, delivery: 1.8, hold: 0.7 }) // 0.02491
 */
export function deliveredSag(melt: HangingMelt, { length, delivery, hold }: Hanging): number {
  const rate = sagConstant(melt) * length;
  /** At a share of the delivery, 0 the lower end, 1 the die. */
  const thinning = (share: number) => rate * share * (delivery + hold - share * delivery);
  const weakest = delivery > hold ? (delivery + hold) / (2 * delivery) : 1;
  if (thinning(weakest) >= 1) return Infinity;
  return integral((share) => 1 / (1 - thinning(share)), 0, 1) - 1;
}
