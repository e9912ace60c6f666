// The time that the air needs to leave a bottle.
import pow from "@stdlib/math-base-special-pow";
import { airMassFlow, type AirPath } from "./airMassFlow.ts";
import type { ChangeOfState } from "./fillTime.ts";
import { integral } from "#physics/numeric/integral.ts";
import { GAS_CONSTANT, HEAT_RATIO, ICE_POINT } from "./standardAir.ts";

/**
 * Time to empty a rigid volume into a constant back pressure.
 *
 *     t = ∫ V dp / (κ R T ṁ(p)),   adiabatic: κ = 1.4, T = T_i (p/p_i)^((κ − 1)/κ);   isothermal: κ = 1, T = T_i
 *
 * Units: V in m³, ABSOLUTE pressures in Pa, starting temperature T_i in °C; t in s.
 * Shape: proportional to V/C; about twice the fill. 0 when already empty enough, Infinity down to the back pressure or below.
 * Holds for: a volume that stays rigid, one path. The true time is between the bounds.
 * Source: ISO 6358-1, Pneumatic fluid power — Determination of flow-rate characteristics, 2013, clause 3 for the flow; the balance of mass and heat derived here
 * Throws: nothing.
 *
 * @example
 * exhaustTime({ conductance: 5e-8, criticalRatio: 0.3 }, { volume: 0.001, from: 700000, to: 111300, back: 101300, temperature: 20 }, "isothermal") // 0.40299
 */
export function exhaustTime(
  path: AirPath,
  exhaust: {
    readonly volume: number;
    readonly from: number;
    readonly to: number;
    readonly back: number;
    readonly temperature: number;
  },
  change: ChangeOfState,
): number {
  const { volume, from, to, back, temperature } = exhaust;
  if (to >= from) return 0;
  if (to <= back) return Infinity;
  const ratio = change === "isothermal" ? 1 : HEAT_RATIO;
  const secondsPerPascal = (ahead: number) => {
    const kelvin = (temperature + ICE_POINT) * pow(ahead / from, (ratio - 1) / ratio);
    const flow = airMassFlow(path, { ahead, behind: back, temperature: kelvin - ICE_POINT });
    return volume / (ratio * GAS_CONSTANT * kelvin * flow);
  };
  const kink = Math.min(from, Math.max(to, back / path.criticalRatio));
  return integral(secondsPerPascal, to, kink) + integral(secondsPerPascal, kink, from);
}
