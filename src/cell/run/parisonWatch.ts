// Gathers from the marks of a run, as it goes on, how long each parison dropped, hung and cooled and how long its melt was hot.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { MarkReader } from "#engine/run/simulation.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { closesOf, contactsOf, dropsOf, opensOf, shotsOf } from "#cell/words/cycleNames.ts";
import { passageOf } from "#cell/records/meltPassage.ts";
import type { ParisonRecord } from "#cell/records/parisonRecord.ts";
import { ContactSample } from "./contactSample.ts";
import { ParisonSample } from "./parisonSample.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import { demoldLimit, stationCooling } from "#cell/layers/stationCooling.ts";
import { shotMasses } from "#cell/table/shotMass.ts";

/** The parison under way at one station; -1 where that has not happened yet. */
interface UnderWay {
  /** 0 where no mass is given: then nothing asks for it. */
  readonly milligrams: number;
  readonly sample: ParisonSample;
  begun: number;
  delivered: number;
  atHeat: number | null;
}

/** The wall under way at one station. */
interface Touching {
  readonly sample: ContactSample;
  /** Ticks from the mark until the wall touches the mold. */
  readonly inflation: number;
  /** Tick of the mark, -1 where no wall is in the mold. */
  marked: number;
}

function touchingAt(scenario: Scenario, station: StationSpec): Touching | undefined {
  const cooling = stationCooling(scenario, station);
  if (!cooling) return undefined;
  const inflation = cooling.inflation ?? 0;
  // The clock of the engine runs for both together, in whole ticks.
  const ticks = (seconds: number): number => Math.round(seconds * TICKS_PER_SECOND);
  const leastTicks = ticks(inflation + cooling.timeTo(demoldLimit(scenario, cooling))) - ticks(inflation);
  return { sample: new ContactSample(leastTicks, TICKS_PER_SECOND), inflation: ticks(inflation), marked: -1 };
}

function begin(parison: UnderWay, tick: number): void {
  parison.begun = tick;
  parison.delivered = -1;
}

export class ParisonWatch {
  /** By counter: what a run must be read for. */
  readonly readers: readonly (readonly [counter: string, reader: MarkReader])[];
  readonly #passage: ReturnType<typeof passageOf>;
  readonly #stations: readonly UnderWay[];
  readonly #touching: readonly (Touching | undefined)[];
  /** In continuous extrusion, the tick at which a mold last closed on a parison; the next parison hangs from then on. */
  #caught = -1;
  #isCounting = false;

  /** Undefined where no material is named. */
  static of({ scenario }: CellPlan): ParisonWatch | undefined {
    return scenario.stations.some(({ process }) => process !== undefined) ? new ParisonWatch(scenario) : undefined;
  }

  private constructor(scenario: Scenario) {
    const { delivery, stations } = scenario;
    this.#passage = passageOf(stations);
    this.#stations = stations.map((station) => ({
      milligrams: shotMasses(station)?.shot ?? 0,
      sample: new ParisonSample(station.name),
      begun: -1,
      delivered: -1,
      atHeat: null,
    }));
    const isContinuous = delivery.kind === "continuous";
    this.#touching = stations.map((station) => touchingAt(scenario, station));
    this.readers = stations.flatMap(({ name }, k) => [
      ...(isContinuous ? this.#catchersOf(name, this.#stations[k]!) : this.#readersOf(name, this.#stations[k]!)),
      ...this.#coolersOf(name, this.#touching[k]),
    ]);
  }

  #readersOf(name: string, parison: UnderWay): readonly (readonly [string, MarkReader])[] {
    return [
      [dropsOf(name), (tick) => begin(parison, tick)],
      [shotsOf(name), (tick) => this.#deliver(parison, tick)],
      [closesOf(name), (tick) => this.#close(parison, tick)],
    ];
  }

  /** It hangs as it grows, its tail included, from the catch before to its own, and then until the mold has closed. */
  #catchersOf(name: string, parison: UnderWay): readonly (readonly [string, MarkReader])[] {
    const caught: MarkReader = (tick) => {
      parison.begun = this.#caught;
      this.#caught = tick;
      this.#deliver(parison, tick);
    };
    return [
      [dropsOf(name), caught],
      [closesOf(name), (tick) => this.#close(parison, tick)],
    ];
  }

  /** A wall that a stop takes from the mold before it opens never comes to its opening: the next mark takes its place. */
  #coolersOf(name: string, touching: Touching | undefined): readonly (readonly [string, MarkReader])[] {
    if (!touching) return [];
    return [
      [contactsOf(name), (tick) => void (touching.marked = tick)],
      [opensOf(name), (tick) => this.#open(touching, tick)],
    ];
  }

  #open(touching: Touching, tick: number): void {
    const { marked, inflation, sample } = touching;
    if (marked !== -1 && this.#isCounting) sample.add(Math.max(0, tick - marked - inflation));
    touching.marked = -1;
  }

  #deliver(parison: UnderWay, tick: number): void {
    const passage = this.#passage;
    parison.delivered = tick;
    if (passage) parison.atHeat = passage.deliver(tick / TICKS_PER_SECOND, parison.milligrams);
  }

  /** A parison that was lost on the way never comes here: the next drop takes its place. */
  #close(parison: UnderWay, tick: number): void {
    const { begun, delivered } = parison;
    if (begun !== -1 && delivered !== -1 && this.#isCounting) {
      const drop = (delivered - begun) / TICKS_PER_SECOND;
      parison.sample.add(drop, (tick - delivered) / TICKS_PER_SECOND, parison.atHeat);
    }
    parison.begun = -1;
    parison.delivered = -1;
  }

  /** From here on parisons count, those under way as well; what is hot stays hot. */
  restartObservation(): void {
    this.#isCounting = true;
  }

  records(): readonly ParisonRecord[] {
    return this.#stations.map(({ sample }, k) => {
      const contact = this.#touching[k]?.sample.record();
      return { ...sample.record(), ...(contact ? { contact } : {}) };
    });
  }
}
