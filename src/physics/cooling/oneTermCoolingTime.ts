// The cooling time by one term, for display: the slowest profile with perfect contact.
import ln from "@stdlib/math-base-special-ln";
import { PI } from "#physics/numeric/pi.ts";
import type { WallCooling } from "./wallCooling.ts";

type PerfectContact = Pick<WallCooling, "wall" | "diffusivity" | "meltTemperature" | "moldTemperature">;

/**
 * Cooling time of a wall in perfect contact with the mold and insulated inside.
 *
 *     t = 4 s² / (π² α) · ln[(4/π) (T_m − T_w) / (T_e − T_w)];   to the mean: 8/π² in place of 4/π
 *
 * Units: s in m, α in m²/s, temperatures in °C; t in s.
 * Shape: proportional to the square of the wall; Infinity where T_e is not above T_w, never below 0.
 * Holds for: Fo > 0.2, there within 2 %; perfect contact. With a real contact the time can be a third too short.
 * Source: Ballman & Shusman, Easy Way to Calculate Injection Molding Setup Time, Modern Plastics 37, 1959, p. 126 (from memory)
 * Throws: nothing.
 *
 * @example
 * oneTermCoolingTime({ wall: 0.001, diffusivity: 1.2e-7, meltTemperature: 200, moldTemperature: 10 }, "mean", 60) // 3.799
 */
export function oneTermCoolingTime(
  cooling: PerfectContact,
  place: "inside face" | "mean",
  demoldTemperature: number,
): number {
  const { wall, diffusivity, meltTemperature, moldTemperature } = cooling;
  if (demoldTemperature <= moldTemperature) return Infinity;
  const factor = place === "mean" ? 8 / (PI * PI) : 4 / PI;
  const ratio = (factor * (meltTemperature - moldTemperature)) / (demoldTemperature - moldTemperature);
  return Math.max(0, ((4 * wall * wall) / (PI * PI * diffusivity)) * ln(ratio));
}
