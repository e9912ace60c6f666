// The flow of a screw without back pressure.
import { PI } from "#physics/numeric/pi.ts";
import { helixOf, type ScrewChannel } from "./screwChannel.ts";

/**
 * Drag flow of a metering zone.
 *
 *     Q_d = ½ π² D² N H sin φ cos φ
 *
 * Units: D and H in m, N in revolutions per s, φ in degrees; Q_d in m³/s of melt.
 * Shape: proportional to speed and depth.
 * Holds for: a shallow channel full of melt that sticks to barrel and screw.
 * Source: Crawford, Plastics Engineering, 3rd ed., 1998, equation 4.3
 * Throws: nothing.
 *
 * @example
 * dragFlow({ diameter: 0.075, depth: 0.006, helixAngle: 20, length: 1.9 }, 1) // 53.53e-6
 */
export function dragFlow(channel: ScrewChannel, speed: number): number {
  const { sine, cosine } = helixOf(channel);
  return (PI * PI * channel.diameter * channel.diameter * speed * channel.depth * sine * cosine) / 2;
}
