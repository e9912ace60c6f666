// The shear stress of the melt at the lips of the die, for the limit of melt fracture.
import pow from "@stdlib/math-base-special-pow";
import { DIE_REFERENCE_RATE } from "#physics/materials/materialTable.ts";

/**
 * Shear stress at the wall of a melt that follows a power law.
 *
 *     τ = η_r γ_r (γ_w / γ_r)ⁿ,   γ_r = 100 1/s
 *
 * Units: η_r in Pa s at γ_r, γ_w the true wall rate in 1/s; τ in Pa.
 * Shape: rises with the n-th power of the rate.
 * Holds for: rates well above the slow flow of zero-shear viscosity. In annular dies fracture may not appear at the
 * stress at which a capillary shows it (Polymer Engineering and Science 48, 2008, p. 405): a warning, never an error.
 * Source: Crawford, Plastics Engineering, 3rd ed., 1998, section 5.4 (from memory)
 * Throws: nothing.
 *
 * @example
 * wallShearStress(2500, 0.5, 400) // 500000
 */
export function wallShearStress(dieViscosity: number, powerLawIndex: number, wallRate: number): number {
  return dieViscosity * DIE_REFERENCE_RATE * pow(wallRate / DIE_REFERENCE_RATE, powerLawIndex);
}
