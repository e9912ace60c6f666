// The mass flow of air through valve, line and blow pin together.
import { ICE_POINT, REFERENCE_DENSITY, REFERENCE_TEMPERATURE } from "./standardAir.ts";

/** A path for air by its standard measurement. */
export interface AirPath {
  /** Sonic conductance C, m³/(s Pa); 1 dm³/(s bar) = 1e-8. */
  readonly conductance: number;
  /** Critical back-pressure ratio b, usually 0.2 to 0.5. */
  readonly criticalRatio: number;
}

/** Share of the choked flow at a ratio of ABSOLUTE pressures, downstream to upstream. */
function chokedShare(ratio: number, criticalRatio: number): number {
  if (ratio >= 1) return 0;
  if (ratio <= criticalRatio) return 1;
  const way = (ratio - criticalRatio) / (1 - criticalRatio);
  return Math.sqrt(1 - way * way);
}

/**
 * Mass flow of air through a path.
 *
 *     choked, p₂/p₁ ≤ b: ṁ = C p₁ ρ₀ √(T₀/T₁);   else × √(1 − ((p₂/p₁ − b)/(1 − b))²)
 *
 * Units: ABSOLUTE pressures in Pa, T₁ in °C, C in m³/(s Pa); ṁ in kg/s. ρ₀ = 1.185 kg/m³ at T₀ = 293.15 K.
 * Shape: constant below the critical ratio, 0 at equal pressures.
 * Holds for: air that flows from `ahead` to `behind` (p₁ ≥ p₂).
 * Source: ISO 6358-1, Pneumatic fluid power — Determination of flow-rate characteristics, 2013, clause 3 and annex
 * Throws: nothing.
 *
 * @example
 * airMassFlow({ conductance: 5e-8, criticalRatio: 0.3 }, { ahead: 800000, behind: 101300, temperature: 20 }) // 0.0474
 */
export function airMassFlow(
  path: AirPath,
  state: { readonly ahead: number; readonly behind: number; readonly temperature: number },
): number {
  const temperatureFactor = Math.sqrt(REFERENCE_TEMPERATURE / (state.temperature + ICE_POINT));
  const choked = path.conductance * state.ahead * REFERENCE_DENSITY * temperatureFactor;
  return choked * chokedShare(state.behind / state.ahead, path.criticalRatio);
}
