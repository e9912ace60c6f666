// The back flow along the screw that the head pressure causes.
import { PI } from "#physics/numeric/pi.ts";
import { helixOf, type ScrewChannel } from "./screwChannel.ts";

/**
 * Back-pressure flow of a metering zone.
 *
 *     Q_b = p π D H³ sin² φ / (12 η L)
 *
 * Units: gauge pressure p in Pa, D, H and L in m, φ in degrees, η in Pa s; Q_b in m³/s of melt.
 * Shape: proportional to the pressure and to the cube of the depth.
 * Holds for: a Newtonian melt of the viscosity in the channel; leakage over the flights is left out.
 * Source: Groover, Fundamentals of Modern Manufacturing, 4th ed., 2010, section 13.2 and example 13.1 (from memory)
 * Throws: nothing.
 *
 * @example
 * backFlow({ diameter: 0.075, depth: 0.006, helixAngle: 20, length: 1.9 }, 7e6, 100) // 18.28e-6
 */
export function backFlow(channel: ScrewChannel, pressure: number, viscosity: number): number {
  const { diameter, depth, length } = channel;
  const { sine } = helixOf(channel);
  return (pressure * PI * diameter * depth * depth * depth * sine * sine) / (12 * viscosity * length);
}
