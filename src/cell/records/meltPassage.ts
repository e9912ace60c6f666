// How long melt was hot when it left the machine: the first in is the first out, and every wait on the way counts.
import { shotMasses } from "#cell/table/shotMass.ts";
import type { StationSpec } from "#scenario/scenario.ts";

/** Shots that may lie behind the one asked for before they are forgotten. */
const mostPast = 4096;

/**
 * The time between two instants at the die that are one hold-up of melt apart. Since what goes in at the hopper comes out
 * in that order, whatever the screw does meanwhile, it is the age of the melt that leaves; averaged over many shots it is hold-up
 * over throughput (Little's law). Between two shots the way is taken to be even.
 */
export class MeltPassage {
  readonly #holdUp: number;
  /** Melt that had left since the start, mg, and when, s: from the shot on that may still be asked for. */
  #masses: number[] = [0];
  #times: number[] = [0];
  #first = 0;

  /** `holdUp` in milligrams. */
  constructor(holdUp: number) {
    this.#holdUp = holdUp;
  }

  /** Seconds at heat of a shot that has just left; null as long as it was in the machine when the run began. */
  deliver(seconds: number, milligrams: number): number | null {
    const masses = this.#masses;
    const times = this.#times;
    const gone = masses[masses.length - 1]! + milligrams;
    masses.push(gone);
    times.push(seconds);
    const entered = gone - this.#holdUp;
    if (entered < 0) return null;
    let first = this.#first;
    while (masses[first + 1]! < entered) first++;
    const mass = masses[first]!;
    const time = times[first]!;
    const age = seconds - time - ((times[first + 1]! - time) * (entered - mass)) / (masses[first + 1]! - mass);
    this.#first = first;
    if (first >= mostPast) this.#forget();
    return age;
  }

  /** A year has five million shots. */
  #forget(): void {
    this.#masses = this.#masses.slice(this.#first);
    this.#times = this.#times.slice(this.#first);
    this.#first = 0;
  }
}

const milligramsPerKilogram = 1e6;

/** Undefined where the hold-up or the mass of a shot is not given. */
export function passageOf(stations: readonly StationSpec[]): MeltPassage | undefined {
  if (stations.some((station) => shotMasses(station) === undefined)) return undefined;
  const holdUp = stations.find(({ process }) => process !== undefined)?.process?.values["delivery.holdUp"];
  return holdUp === undefined ? undefined : new MeltPassage(holdUp * milligramsPerKilogram);
}
