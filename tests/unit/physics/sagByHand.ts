// Two sags in closed form for checks, computed independently.
import type { Hanging } from "#physics/parison/deliveredSag.ts";
import { sagConstant, type HangingMelt } from "#physics/parison/sagConstant.ts";

// Derived by hand [C]; only the viscosity is of Trouton, On the coefficient of viscous traction, Proc. R. Soc. A 77 (1906) 426 [M].

/** The first term of the exact sag: K L₀ (t_d/6 + t_h/2), as a share of L₀. */
export function firstOrderSag(melt: HangingMelt, { length, delivery, hold }: Hanging): number {
  return sagConstant(melt) * length * (delivery / 6 + hold / 2);
}

/** A parison that hangs in its full length at once: −ln(1 − K L₀ t)/(K L₀ t) − 1; Infinity when the top breaks. */
export function hungSag(melt: HangingMelt, length: number, time: number): number {
  const stretch = sagConstant(melt) * length * time;
  if (stretch >= 1) return Infinity;
  return stretch === 0 ? 0 : -Math.log(1 - stretch) / stretch - 1;
}
