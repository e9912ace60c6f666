// The sag of a parison that hangs in full length from the start: the upper bound.
import ln from "@stdlib/math-base-special-ln";
import { sagConstant, type HangingMelt } from "./sagConstant.ts";

/**
 * Share by which a parison hung all at once has grown longer.
 *
 *     ΔL/L₀ = −ln(1 − K L₀ t)/(K L₀ t) − 1,   K = ρ g/(3 η₀);   first order: K L₀ t/2
 *
 * Units: L₀ in m, t in s; the sag is a share of L₀.
 * Shape: grows faster than time; Infinity from K L₀ t = 1 on, where the top has drawn to nothing.
 * Holds for: a Newtonian melt hanging freely. Every slice carries what hangs below it; its weight stays as it thins.
 * Source: Derived here from the balance of weight and stress on a slice, after Trouton, Proceedings of the Royal Society A 77, 1906, p. 426
 * Throws: nothing.
 *
 * @example
 * hungSag({ meltDensity: 760, zeroShearViscosity: 20000 }, 0.30, 1.8) // 0.03512
 */
export function hungSag(melt: HangingMelt, length: number, time: number): number {
  const stretch = sagConstant(melt) * length * time;
  if (stretch >= 1) return Infinity;
  return stretch === 0 ? 0 : -ln(1 - stretch) / stretch - 1;
}
