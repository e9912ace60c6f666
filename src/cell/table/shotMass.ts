// The mass of one shot of a station, exact in whole milligrams.
import { invariant } from "#foundation/invariant.ts";
import type { StationSpec } from "#scenario/scenario.ts";

const milligramsPerKilogram = 1e6;

type Weighed = Pick<StationSpec, "cavities" | "partMass" | "flashMass">;

/** Milligrams of one part, of one part and the flash that leaves the mold with it, and of a whole shot. */
export interface ShotMasses {
  readonly part: number;
  readonly partWithFlash: number;
  readonly shot: number;
}

/** Undefined where no mass is given. */
export function shotMasses({ cavities, partMass, flashMass }: Weighed): ShotMasses | undefined {
  if (partMass === undefined || flashMass === undefined) return undefined;
  const part = Math.round(partMass * milligramsPerKilogram);
  const partWithFlash = part + Math.round(flashMass * milligramsPerKilogram);
  return { part, partWithFlash, shot: cavities * partWithFlash };
}

/** Parts and flash of all cavities, milligrams, for what a scenario without masses cannot ask for. */
export function shotMass(station: Weighed): number {
  const masses = shotMasses(station);
  invariant(masses, "what needs a mass has one");
  return masses.shot;
}
