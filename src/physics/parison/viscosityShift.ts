// The change of the viscosity of a melt with its temperature.
import exp from "@stdlib/math-base-special-exp";

/** J/(mol K), exact: BIPM, The International System of Units, 9th ed., 2019 (from memory). */
const GAS_CONSTANT = 8.31446261815324;
/** K at 0 °C. */
const ICE_POINT = 273.15;

/**
 * Factor of the zero-shear viscosity at a temperature to that at another, and of all relaxation times.
 *
 *     a_T = exp[E/R (1/T − 1/T₀)]
 *
 * Units: activation energy E in J/mol, temperatures in °C.
 * Shape: 1 at the reference, below 1 above it. At a fixed shear rate in the range of the power law the viscosity changes with a_Tⁿ.
 * Holds for: melts more than 100 K above their glass transition. Nearer to it, as for PVC, E stands for a small range only.
 * Source: Rao & Schumacher, Design Formulas for Plastics Engineers, 2nd ed., 2004, section 1.3 (in part read)
 * Throws: nothing.
 *
 * @example
 * viscosityShift(28000, 190, 210) // 0.7401
 */
export function viscosityShift(activationEnergy: number, reference: number, temperature: number): number {
  return exp((activationEnergy / GAS_CONSTANT) * (1 / (temperature + ICE_POINT) - 1 / (reference + ICE_POINT)));
}
