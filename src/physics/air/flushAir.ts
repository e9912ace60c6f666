// The free air that flushes a part while it cools.
import { airMassFlow, type AirPath } from "./airMassFlow.ts";
import { ATMOSPHERE, REFERENCE_DENSITY } from "./standardAir.ts";

/**
 * Free air that flows through a part at blow pressure.
 *
 *     V = ṁ(p + p_a → p_a) t / ρ₀
 *
 * Units: GAUGE pressure p in Pa, time t in s, air temperature in °C; m³ at 100 kPa and 20 °C, ρ₀ = 1.185 kg/m³.
 * Shape: proportional to time and conductance; to the absolute pressure where the flow is choked.
 * Holds for: a supply that keeps the blow pressure in the part, and an outlet to the open air.
 * Source: ISO 6358-1, Pneumatic fluid power — Determination of flow-rate characteristics, 2013, clause 3 (from memory)
 * Throws: nothing.
 *
 * @example
 * flushAir({ conductance: 1e-8, criticalRatio: 0.3 }, { pressure: 600000, time: 3, temperature: 20 }) // 0.02104
 */
export function flushAir(
  outlet: AirPath,
  { pressure, time, temperature }: { readonly pressure: number; readonly time: number; readonly temperature: number },
): number {
  const flow = airMassFlow(outlet, { ahead: pressure + ATMOSPHERE, behind: ATMOSPHERE, temperature });
  return (flow * time) / REFERENCE_DENSITY;
}
