// The water that carries the heat of a mold away.

/** J/(kg K) and kg/m³ of water at 15 °C: Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., 2007, table A.6 (from memory). */
const SPECIFIC_HEAT = 4187;
const DENSITY = 999;

/**
 * Flow of cooling water for a heat load.
 *
 *     V = Q / (ρ c ΔT)
 *
 * Units: Q in W, rise ΔT of the water in K; V in m³/s.
 * Shape: proportional to the load; half the rise needs twice the flow.
 * Holds for: water of 5 to 25 °C without glycol, which lowers c.
 * Source: Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., 2007, section 8.3 and table A.6 (from memory)
 * Throws: nothing.
 *
 * @example
 * coolingWater(10000, 3) * 60000 // 47.8
 */
export function coolingWater(heat: number, rise: number): number {
  return heat / (DENSITY * SPECIFIC_HEAT * rise);
}
