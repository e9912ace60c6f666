// The temperature in a blown wall while it cools.
import { hottestPoint } from "./hottestPoint.ts";
import type { WallCooling, WallPlace } from "./wallCooling.ts";
import { profileAt, profileCourse, profileMean, type WallProfile } from "./wallProfile.ts";

/**
 * Temperature at a place of a wall after some time in the mold.
 *
 *     T(x, t) = T∞(x) + Σₙ cₙ Xₙ(x) exp(−ζₙ² Fo)
 *     perfect contact, inside insulated: (T − T_w)/(T_m − T_w) = Σₘ (4/π) (−1)^m/(2m + 1) exp(−(2m + 1)² π² Fo/4)
 *     and for the mean: Σₘ 8/((2m + 1)² π²) exp(−(2m + 1)² π² Fo/4)
 *
 * Units: °C; time in s.
 * Shape: falls from the melt temperature to T∞, the straight line between air and mold (the mold temperature alone when
 * the inside is insulated).
 * Holds for: a wall that is thin against its radius, constant diffusivity, heat of fusion only as part of that diffusivity.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, sections 3.3, 3.4 and 3.11 (from memory)
 * Throws: BrokenInvariant for a wall, contact or time that is not physical.
 *
 * @example
 * wallTemperature({ wall: 0.04, diffusivity: 18.8e-6, conductivity: 63.9, meltTemperature: -20, moldTemperature: 60, moldContact: 500 }, "inside face", 480) // 43.0
 */
export function wallTemperature(cooling: WallCooling, place: WallPlace, time: number): number {
  return temperatureCourse(cooling, place)(time);
}

/** The temperature over time, with the profiles computed once; for root finding. */
export function temperatureCourse(cooling: WallCooling, place: WallPlace): (time: number) => number {
  const profile = profileCourse(cooling);
  return (time) => (time === 0 ? cooling.meltTemperature : valueAt(profile(time), place));
}

function valueAt(profile: WallProfile, place: WallPlace): number {
  if (place === "mean") return profileMean(profile);
  if (place === "hottest point") return profileAt(profile, hottestPoint(profile));
  return profileAt(profile, place === "inside face" ? 0 : 1);
}
