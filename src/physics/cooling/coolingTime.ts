// The time that a wall must stay in the closed mold, from its thickest place and its contact.
import { invariant } from "#foundation/invariant.ts";
import { rootBetween } from "#physics/numeric/rootBetween.ts";
import type { WallCooling, WallPlace } from "./wallCooling.ts";
import { temperatureCourse } from "./wallTemperature.ts";

/** Fourier number at which every profile of any wall has decayed. */
const STEADY_STATE = 1e12;

/**
 * Time until a place of the wall has fallen to the demold temperature.
 *
 *     the t for which T(place, t) = T_e in the series of wallTemperature
 *
 * Units: s; temperatures in °C.
 * Shape: with perfect contact proportional to the square of the wall, with poor contact nearer to the wall itself. 0 where
 * the melt is not hotter than T_e, Infinity where mold and air do not cool it to T_e. Relative error below 1e-9.
 * Holds for: mold and air colder than the melt. The hottest point decides: with air inside it lies within the wall. The THICKEST place (pinch-off tail, handle) sets the time, not the mean wall.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, sections 3.3, 3.4 and 3.11 (from memory)
 * Throws: BrokenInvariant where mold or air is not colder than the melt.
 *
 * @example
 * coolingTime({ wall: 0.001, diffusivity: 1.2e-7, conductivity: 0.25, meltTemperature: 200, moldTemperature: 10, moldContact: 1000 }, "hottest point", 60) // 8.030
 */
export function coolingTime(cooling: WallCooling, place: WallPlace, demoldTemperature: number): number {
  const { wall, diffusivity, meltTemperature, moldTemperature, insideAir } = cooling;
  const warmest = Math.max(moldTemperature, insideAir?.temperature ?? moldTemperature);
  invariant(warmest < meltTemperature, "what cools a wall is colder than the melt", { warmest, meltTemperature });
  if (meltTemperature <= demoldTemperature) return 0;
  const course = temperatureCourse(cooling, place);
  let late = (wall * wall) / diffusivity;
  if (course(late * STEADY_STATE) >= demoldTemperature) return Infinity;
  while (course(late) > demoldTemperature) late *= 2;
  return rootBetween((time) => course(time) - demoldTemperature, 0, late);
}
