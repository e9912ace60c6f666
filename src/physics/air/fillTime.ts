// The time that blow air needs to fill a bottle.
import { airMassFlow, type AirPath } from "./airMassFlow.ts";
import { integral } from "#physics/numeric/integral.ts";
import { GAS_CONSTANT, HEAT_RATIO, ICE_POINT } from "./standardAir.ts";

/** The two bounds of the real change of state: constant temperature, or no heat transfer. */
export type ChangeOfState = "isothermal" | "adiabatic";

/**
 * Time to fill a rigid volume from a supply of constant pressure.
 *
 *     t = ∫ V dp / (κ R T₁ ṁ(p)),   κ = 1 isothermal, 1.4 adiabatic
 *
 * Units: V in m³, ABSOLUTE pressures in Pa, supply temperature T₁ in °C; t in s.
 * Shape: proportional to V/C. 0 when already full, Infinity where the supply is below the pressure wanted.
 * Holds for: a volume that has its full size from the start. A bottle grows first, at low pressure, which takes about the same
 * time again. The true time is between the bounds.
 * Source: ISO 6358-1, Pneumatic fluid power — Determination of flow-rate characteristics, 2013, clause 3 for the flow; the balance of mass and heat derived here
 * Throws: nothing.
 *
 * @example
 * fillTime({ conductance: 5e-8, criticalRatio: 0.3 }, { volume: 0.001, from: 101300, to: 700000, supply: 800000, temperature: 20 }, "isothermal") // 0.17011
 */
export function fillTime(
  path: AirPath,
  fill: {
    readonly volume: number;
    readonly from: number;
    readonly to: number;
    readonly supply: number;
    readonly temperature: number;
  },
  change: ChangeOfState,
): number {
  const { volume, from, to, supply, temperature } = fill;
  if (to <= from) return 0;
  if (to >= supply) return Infinity;
  const ratio = change === "isothermal" ? 1 : HEAT_RATIO;
  const energy = ratio * GAS_CONSTANT * (temperature + ICE_POINT);
  const secondsPerPascal = (behind: number) =>
    volume / (energy * airMassFlow(path, { ahead: supply, behind, temperature }));
  const kink = Math.min(to, Math.max(from, path.criticalRatio * supply));
  return integral(secondsPerPascal, from, kink) + integral(secondsPerPascal, kink, to);
}
