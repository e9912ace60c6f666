// The volume flow of the melt through a die while the parison drops.

/**
 * Volume flow through one die.
 *
 *     Q = m / (ρ t)
 *
 * Units: m in kg, ρ the MELT density in kg/m³, t in s; Q in m³/s.
 * Shape: half the time has twice the flow.
 * Holds for: a steady drop. With the density of the solid the flow of HDPE is a fifth too low.
 * Source: Derived here from the conservation of mass
 * Throws: nothing.
 *
 * @example
 * parisonFlow(0.060, 760, 1.8) // 4.386e-5
 */
export function parisonFlow(mass: number, meltDensity: number, dropTime: number): number {
  return mass / (meltDensity * dropTime);
}
