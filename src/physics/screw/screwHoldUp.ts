// The mass of plastic in the channel of a screw from hopper to tip.
import { PI } from "#physics/numeric/pi.ts";

/**
 * Hold-up of a screw.
 *
 *     M = ρ̄ π (D − H̄) H̄ L (1 − f)
 *
 * Units: D, mean depth H̄ and filled length L in m, mean bulk density ρ̄ in kg/m³, f the share that the flights take; M in kg.
 * Shape: nearly proportional to the depth.
 * Holds for: a full channel; a starved screw holds less. ρ̄ is between the bulk density of pellets and the melt density.
 * Source: Derived here from the ring between root and barrel, Crawford, Plastics Engineering, 3rd ed., 1998, section 4.2
 * Throws: nothing.
 *
 * @example
 * screwHoldUp({ diameter: 0.0635, meanDepth: 0.0072, length: 1.27, flightShare: 0.1, density: 650 }) // 0.9461
 */
export function screwHoldUp(screw: {
  readonly diameter: number;
  readonly meanDepth: number;
  readonly length: number;
  readonly flightShare: number;
  readonly density: number;
}): number {
  const ring = PI * (screw.diameter - screw.meanDepth) * screw.meanDepth;
  return screw.density * ring * screw.length * (1 - screw.flightShare);
}
