// The heat of a plastic between two temperatures, phase by phase.

/** The heat capacity of a plastic below and above its melting or glass transition. */
export interface Phases {
  /** J/(kg K), without the heat of fusion. */
  readonly solid: number;
  /** J/(kg K) */
  readonly melt: number;
  /** °C: melting of crystals, or the glass transition. */
  readonly transition: number;
  /** J/kg; 0 for an amorphous plastic. */
  readonly fusion: number;
}

/**
 * Heat that a kilogram takes up from one temperature to another, or gives off on the way back.
 *
 *     Δh = h(T₂) − h(T₁),   h = c_s (T − T_t) up to T_t,   λ + c_m (T − T_t) above it
 *
 * Units: c in J/(kg K), temperatures in °C, λ in J/kg; Δh in J/kg.
 * Shape: linear in each phase, with a jump of λ at the transition; negative where the second temperature is lower.
 * Holds for: a mean specific heat for each phase. Melting takes place at one temperature here, in a plastic over some 20 K.
 * Source: Gaur & Wunderlich, Heat Capacity of Linear Macromolecules, Journal of Physical and Chemical Reference Data 10, 1981, p. 119 (from memory)
 * Throws: nothing.
 *
 * @example
 * enthalpyChange({ solid: 2200, melt: 2500, transition: 130, fusion: 200000 }, 65, 190) // 493000
 */
export function enthalpyChange(phases: Phases, from: number, to: number): number {
  return enthalpy(phases, to) - enthalpy(phases, from);
}

function enthalpy({ solid, melt, transition, fusion }: Phases, temperature: number): number {
  const above = temperature - transition;
  return above > 0 ? fusion + melt * above : solid * above;
}
