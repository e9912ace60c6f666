// The output of a screw against the head pressure.
import { backFlow } from "./backFlow.ts";
import { dragFlow } from "./dragFlow.ts";
import type { ScrewChannel } from "./screwChannel.ts";

/**
 * Output of a metering zone.
 *
 *     Q_x = Q_d − Q_b
 *
 * Units: speed in revolutions per s, gauge pressure in Pa, viscosity in Pa s; Q_x in m³/s of MELT.
 * Shape: rises with speed, falls with pressure; never below 0.
 * Holds for: what dragFlow and backFlow hold for; a measured rate is better.
 * Source: Groover, Fundamentals of Modern Manufacturing, 4th ed., 2010, section 13.2 and example 13.2 (from memory)
 * Throws: nothing.
 *
 * @example
 * screwOutput({ diameter: 0.075, depth: 0.006, helixAngle: 20, length: 1.9 }, { speed: 1, pressure: 7e6, viscosity: 100 }) // 35.25e-6
 */
export function screwOutput(
  channel: ScrewChannel,
  run: { readonly speed: number; readonly pressure: number; readonly viscosity: number },
): number {
  return Math.max(0, dragFlow(channel, run.speed) - backFlow(channel, run.pressure, run.viscosity));
}
