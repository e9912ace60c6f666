// The place in a cooling wall at which it is hottest.
import { rootBetween } from "#physics/numeric/rootBetween.ts";
import { profileSlope, type WallProfile } from "./wallProfile.ts";

/**
 * The place of the highest temperature in a wall, from 0 at the inside face to 1 at the mold.
 *
 *     the x for which dT/dx = 0 in the series of wallTemperature
 *
 * Units: share of the wall.
 * Shape: 0 where the inside counts as insulated or the air is the hottest, 1/2 where both faces cool alike. A wall that starts at one
 * temperature never has more than one such place.
 * Holds for: any time after the first contact.
 * Source: Derived here from Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, section 3.11 (from memory)
 * Throws: nothing.
 *
 * @example
 * hottestPoint(profileCourse({ wall: 0.001, diffusivity: 1.2e-7, conductivity: 0.25, meltTemperature: 200, moldTemperature: 10, moldContact: 1000, insideAir: { temperature: 10, transfer: 1000 } })(2)) // 0.500
 */
export function hottestPoint(profile: WallProfile): number {
  const slope = (place: number) => profileSlope(profile, place);
  if (slope(0) <= 0) return 0;
  return slope(1) >= 0 ? 1 : rootBetween((place) => -slope(place), 0, 1);
}
