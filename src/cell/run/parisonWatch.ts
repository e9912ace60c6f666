// Gathers from the marks of a run, as it goes on, how long each parison dropped and hung and how long its melt was hot.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { MarkReader } from "#engine/run/simulation.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { closesOf, dropsOf, shotsOf } from "#cell/words/cycleNames.ts";
import { passageOf } from "#cell/records/meltPassage.ts";
import type { ParisonRecord } from "#cell/records/parisonRecord.ts";
import { ParisonSample } from "./parisonSample.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
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

function begin(parison: UnderWay, tick: number): void {
  parison.begun = tick;
  parison.delivered = -1;
}

export class ParisonWatch {
  /** By counter: what a run must be read for. */
  readonly readers: readonly (readonly [counter: string, reader: MarkReader])[];
  readonly #passage: ReturnType<typeof passageOf>;
  readonly #stations: readonly UnderWay[];
  /** The tick at which a mold last caught a parison from a die that never stops: from then on the next one hangs. */
  #caught = -1;
  #isCounting = false;

  /** Undefined where no material is named. */
  static of({ scenario }: CellPlan): ParisonWatch | undefined {
    return scenario.stations.some(({ process }) => process !== undefined) ? new ParisonWatch(scenario) : undefined;
  }

  private constructor({ delivery, stations }: Scenario) {
    this.#passage = passageOf(stations);
    this.#stations = stations.map((station) => ({
      milligrams: shotMasses(station)?.shot ?? 0,
      sample: new ParisonSample(station.name),
      begun: -1,
      delivered: -1,
      atHeat: null,
    }));
    const isContinuous = delivery.kind === "continuous";
    this.readers = stations.flatMap(({ name }, k) =>
      isContinuous ? this.#catchersOf(name, this.#stations[k]!) : this.#readersOf(name, this.#stations[k]!),
    );
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
    return this.#stations.map(({ sample }) => sample.record());
  }
}
