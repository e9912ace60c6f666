// An estimate of the rate of a screw from its diameter alone.
import pow from "@stdlib/math-base-special-pow";

const INCH = 0.0254;
const POUND_PER_HOUR = 0.45359237 / 3600;

/**
 * Plasticating rate of a smooth-bore extruder by rule of thumb.
 *
 *     lb/h ≈ 16 D^2.2,   D in inches
 *
 * Units: diameter in m; the rate in kg/s.
 * Shape: twice the diameter has 4.6 times the rate.
 * Holds for: polyolefins, smooth feed; another published rule is twice as high at 90 mm. A measured rate is better.
 * Source: Giles, Wagner & Mount, Extrusion: The Definitive Processing Guide and Handbook, 2005, chapter on screw output (from memory, low confidence)
 * Throws: nothing.
 *
 * @example
 * ruleOfThumbRate(0.0635) * 7936.64 // 120.1
 */
export function ruleOfThumbRate(diameter: number): number {
  return 16 * pow(diameter / INCH, 2.2) * POUND_PER_HOUR;
}
