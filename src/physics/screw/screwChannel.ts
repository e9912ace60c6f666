// The geometry of the metering zone of a screw.
import cos from "@stdlib/math-base-special-cos";
import sin from "@stdlib/math-base-special-sin";
import { PI } from "#physics/numeric/pi.ts";

export interface ScrewChannel {
  /** m */
  readonly diameter: number;
  /** Of the metering zone, m. */
  readonly depth: number;
  /** Degrees; a pitch of one diameter has 17.66. */
  readonly helixAngle: number;
  /** Of the metering zone along the axis, m. */
  readonly length: number;
}

/** Sine and cosine of the helix angle. */
export function helixOf(channel: ScrewChannel): { readonly sine: number; readonly cosine: number } {
  const radians = (channel.helixAngle * PI) / 180;
  return { sine: sin(radians), cosine: cos(radians) };
}
