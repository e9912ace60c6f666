// The hoop stress of the wall under blow pressure.

/**
 * Hoop stress in a thin round wall under blow pressure.
 *
 *     σ = p D / (2 h)
 *
 * Units: gauge pressure p in Pa, diameter D and wall h in m; σ in Pa.
 * Shape: half the wall has twice the stress.
 * Holds for: h below a tenth of the radius.
 * Source: Crawford, Plastics Engineering, 3rd ed., 1998, example 4.4
 * Throws: nothing.
 *
 * @example
 * hoopStress(400000, 0.050, 0.00242) // 4.13e6
 */
export function hoopStress(gaugePressure: number, diameter: number, wall: number): number {
  return (gaugePressure * diameter) / (2 * wall);
}
