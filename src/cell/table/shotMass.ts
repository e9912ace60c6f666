// The mass of one shot of a station, exact in whole milligrams.
import type { StationSpec } from "#scenario/scenario.ts";

const milligramsPerKilogram = 1e6;

/** Parts and flash of all cavities, milligrams. */
export function shotMass(station: StationSpec): number {
  return station.cavities * partWithFlash(station);
}

/** One part and the flash that leaves the mold with it, milligrams. */
export function partWithFlash(station: StationSpec): number {
  return Math.round(station.partMass * milligramsPerKilogram) + Math.round(station.flashMass * milligramsPerKilogram);
}
