// The free air of one bottle, at the reference pressure.
import { ATMOSPHERE, REFERENCE_PRESSURE } from "./standardAir.ts";

export interface FreeAir {
  /** m³ in the blown bottle. */
  readonly total: number;
  /** m³ that the compressor added. */
  readonly added: number;
}

/**
 * Free air of one blow.
 *
 *     total V (p + p_a)/p₀, added V p/p₀
 *
 * Units: V in m³ with the dead volume of hose and pin, GAUGE pressure p in Pa, p₀ = 100 kPa; m³ at 100 kPa.
 * Shape: proportional to volume and pressure.
 * Holds for: air that has its initial temperature at the end of the blow.
 * Source: ISO 8778, Pneumatic fluid power — Standard reference atmosphere, 2003, clause 4 (from memory)
 * Throws: nothing.
 *
 * @example
 * freeAir(0.00105, 600000).added // 0.0063
 */
export function freeAir(volume: number, gaugePressure: number): FreeAir {
  return {
    total: (volume * (gaugePressure + ATMOSPHERE)) / REFERENCE_PRESSURE,
    added: (volume * gaugePressure) / REFERENCE_PRESSURE,
  };
}
