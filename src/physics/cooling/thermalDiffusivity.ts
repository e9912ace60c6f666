// How fast warmth spreads in a plastic, always worked out from what is stored and never stored beside it.

/**
 * Thermal diffusivity of a solid.
 *
 *     α = k / (ρ c)
 *
 * Units: k in W/(m K), ρ in kg/m³, c in J/(kg K); α in m²/s.
 * Shape: grows with conduction, falls with the heat that a volume holds.
 * Holds for: one phase at one temperature; while a semi-crystalline wall freezes, an effective value is used instead.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, section 1.6 (from memory)
 * Throws: nothing.
 *
 * @example
 * thermalDiffusivity({ conductivity: 0.25, density: 950, specificHeat: 2200 }) // 1.196e-7
 */
export function thermalDiffusivity(solid: {
  readonly conductivity: number;
  readonly density: number;
  readonly specificHeat: number;
}): number {
  return solid.conductivity / (solid.density * solid.specificHeat);
}
