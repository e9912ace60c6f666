// The time until the pressure in the bottle is low enough to open the mold.
import type { AirPath } from "./airMassFlow.ts";
import { exhaustTime } from "./exhaustTime.ts";
import type { ChangeOfState } from "./fillTime.ts";
import { ATMOSPHERE } from "./standardAir.ts";

/**
 * Vent time from blow pressure to the gauge pressure under which the mold may open.
 *
 *     t = exhaustTime from p_blow + p_a to p_open + p_a against p_a
 *
 * Units: V in m³, GAUGE pressures in Pa, temperature in °C, p_a = 101325 Pa; t in s.
 * Shape: goes to Infinity as the threshold goes to 0. A computed time is never a safe limit.
 * Holds for: one path to the open air.
 * Source: ISO 6358-1, Pneumatic fluid power — Determination of flow-rate characteristics, 2013, clause 3 for the flow; the balance of mass and heat derived here
 * Throws: nothing.
 *
 * @example
 * ventTime({ conductance: 5e-8, criticalRatio: 0.3 }, { volume: 0.001, blowPressure: 600000, ventTo: 10000, temperature: 20 }, "isothermal") // 0.4033
 */
export function ventTime(
  path: AirPath,
  vent: {
    readonly volume: number;
    readonly blowPressure: number;
    readonly ventTo: number;
    readonly temperature: number;
  },
  change: ChangeOfState,
): number {
  const { volume, temperature } = vent;
  const from = vent.blowPressure + ATMOSPHERE;
  const to = vent.ventTo + ATMOSPHERE;
  return exhaustTime(path, { volume, from, to, back: ATMOSPHERE, temperature }, change);
}
