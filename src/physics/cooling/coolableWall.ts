// The inverse of the cooling time: the largest thickness of the thickest place.
import { rootBetween } from "#physics/numeric/rootBetween.ts";
import type { WallCooling, WallPlace } from "./wallCooling.ts";
import { wallTemperature } from "./wallTemperature.ts";

/** Upper limit of a blown wall, m. */
const THICKEST = 0.1;
const THINNEST = 1e-6;
/** Where the search begins, m. */
const USUAL = 0.002;

/**
 * The thickest wall whose place has cooled to the demold temperature after a given time.
 *
 *     the s for which T(place, t; s) = T_e in the series of wallTemperature
 *
 * Units: m; time in s, temperatures in °C.
 * Shape: rises with time. 0 where the time is too short for any wall, and never above 0.1 m.
 * Holds for: mold and air colder than the melt.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, sections 3.3, 3.4 and 3.11 (from memory)
 * Throws: BrokenInvariant for a contact or time that is not physical.
 *
 * @example
 * coolableWall({ diffusivity: 1.2e-7, conductivity: 0.25, meltTemperature: 200, moldTemperature: 10, moldContact: 1000 }, "hottest point", { time: 8.03, demoldTemperature: 60 }) // 0.001000
 */
export function coolableWall(
  cooling: Omit<WallCooling, "wall">,
  place: WallPlace,
  wanted: { readonly time: number; readonly demoldTemperature: number },
): number {
  const excess = (wall: number) => wallTemperature({ ...cooling, wall }, place, wanted.time) - wanted.demoldTemperature;
  if (excess(THINNEST) > 0) return 0;
  let [thin, thick] = [THINNEST, USUAL];
  // From below, because a thicker wall needs more profiles.
  while (excess(thick) <= 0) {
    if (thick === THICKEST) return THICKEST;
    [thin, thick] = [thick, Math.min(THICKEST, 2 * thick)];
  }
  return rootBetween(excess, thin, thick);
}
