// The true shear rate of a shear-thinning melt at the wall of a slit.

/**
 * Shear rate at the wall of a slit, power law.
 *
 *     γ_w = γ (2n + 1) / (3n)
 *
 * Units: γ, the Newtonian rate, and γ_w in 1/s; n none.
 * Shape: the Newtonian rate at n = 1, higher for a smaller n.
 * Holds for: slits and thin annular gaps (a round capillary has (3n + 1)/(4n)).
 * Source: Michaeli, Extrusion Dies for Plastics and Rubber, 3rd ed., 2003, section 2.1 (from memory)
 * Throws: nothing.
 *
 * @example
 * powerLawShearRate(1306, 0.5) // 1741
 */
export function powerLawShearRate(newtonianRate: number, powerLawIndex: number): number {
  return (newtonianRate * (2 * powerLawIndex + 1)) / (3 * powerLawIndex);
}
