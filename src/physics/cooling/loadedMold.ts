// The temperature of a cavity's wall under its heat load.

/**
 * Mean temperature of a mold at a steady heat load.
 *
 *     T = T₀ + R Q
 *
 * Units: temperatures in °C, thermal resistance R between cavity and cooling water in K/W, heat load Q in W.
 * Shape: rises with the load; T₀ without a load or a resistance.
 * Holds for: the mean over a cycle; the wall of the cavity swings around it.
 * Source: Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., 2007, section 3.1, thermal resistance (from memory)
 * Throws: nothing.
 *
 * @example
 * loadedMold(10, 0.0005, 8000) // 14
 */
export function loadedMold(unloaded: number, resistance: number, heat: number): number {
  return unloaded + resistance * heat;
}
