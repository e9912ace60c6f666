// The work of a compressor for a kilogram of air.
import pow from "@stdlib/math-base-special-pow";
import { ATMOSPHERE, GAS_CONSTANT, HEAT_RATIO, ICE_POINT } from "./standardAir.ts";

/**
 * Isentropic work of compression from the atmosphere.
 *
 *     w = κ/(κ − 1) R T₁ [(p₂/p₁)^((κ − 1)/κ) − 1],   κ = 1.4
 *
 * Units: GAUGE pressure in Pa, p₂ = p + p_a, p₁ = p_a; intake temperature T₁ in °C; w in J/kg.
 * Shape: rises more slowly than the pressure. Two stages with a cooler between them need less.
 * Holds for: one stage without losses. The power of a compressor is larger by its efficiency.
 * Source: Çengel & Boles, Thermodynamics, 5th ed., 2006, section 7-11 and example 7-13 (from memory)
 * Throws: nothing.
 *
 * @example
 * compressionWork(700000, 20) // 237237
 */
export function compressionWork(gaugePressure: number, intake: number): number {
  const exponent = (HEAT_RATIO - 1) / HEAT_RATIO;
  const ratio = (gaugePressure + ATMOSPHERE) / ATMOSPHERE;
  return (GAS_CONSTANT * (intake + ICE_POINT) * (pow(ratio, exponent) - 1)) / exponent;
}
