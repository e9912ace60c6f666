// Reads from the marks of a run, as it goes on, how long each parison dropped and hung and how long its melt was hot.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import type { Simulation } from "#engine/simulation.ts";
import { closesOf, dropsOf, shotsOf } from "./cycleNames.ts";
import { passageOf } from "./meltPassage.ts";
import type { ParisonRecord } from "./parisonRecord.ts";
import { ParisonSample } from "./parisonSample.ts";
import { slowestTurn, type CellPlan } from "./planCell.ts";
import { shotMass } from "./shotMass.ts";

/** A run is read so many turns of the cell at a time, so that its marks stay few. */
const turnsRead = 250;

/** What a watched run must mark; nothing where no material is named. */
export function watchedMarks({ scenario }: Pick<CellPlan, "scenario">): readonly string[] {
  if (!scenario.stations.some(({ process }) => process !== undefined)) return [];
  return scenario.stations.flatMap(({ name }) => [dropsOf(name), shotsOf(name), closesOf(name)]);
}

/** The parison under way at one station; -1 where that has not happened yet. */
interface UnderWay {
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

type Reader = (tick: number) => void;

export class ParisonWatch {
  readonly #simulation: Simulation;
  readonly #slice: number;
  readonly #passage: ReturnType<typeof passageOf>;
  readonly #stations: readonly UnderWay[];
  /** The tick at which a mold last caught a parison from a die that never stops: from then on the next one hangs. */
  #caught = -1;
  /** By counter; the counters of other things have none. */
  readonly #readers: readonly (Reader | undefined)[];
  #read = 0;
  #isCounting = false;

  constructor(simulation: Simulation, plan: CellPlan) {
    const { stations } = plan.scenario;
    this.#simulation = simulation;
    this.#slice = Math.max(1, Math.round(turnsRead * slowestTurn(plan)));
    this.#passage = passageOf(stations);
    this.#stations = stations.map((station) => ({
      milligrams: shotMass(station),
      sample: new ParisonSample(station.name),
      begun: -1,
      delivered: -1,
      atHeat: null,
    }));
    const isContinuous = plan.scenario.delivery.kind === "continuous";
    const readers = new Map(
      stations.flatMap(({ name }, k) =>
        isContinuous ? this.#catchersOf(name, this.#stations[k]!) : this.#readersOf(name, this.#stations[k]!),
      ),
    );
    this.#readers = plan.program.counters.map((name) => readers.get(name));
  }

  #readersOf(name: string, parison: UnderWay): readonly (readonly [string, Reader])[] {
    return [
      [dropsOf(name), (tick) => begin(parison, tick)],
      [shotsOf(name), (tick) => this.#deliver(parison, tick)],
      [closesOf(name), (tick) => this.#close(parison, tick)],
    ];
  }

  /** It hangs as it grows, its tail included, from the catch before to its own, and then until the mold has closed. */
  #catchersOf(name: string, parison: UnderWay): readonly (readonly [string, Reader])[] {
    const caught: Reader = (tick) => {
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
    parison.delivered = tick;
    parison.atHeat = this.#passage?.deliver(tick / TICKS_PER_SECOND, parison.milligrams) ?? null;
  }

  /** A parison that was lost on the way never comes here: the next drop takes its place. */
  #close(parison: UnderWay, tick: number): void {
    const { begun, delivered, atHeat, sample } = parison;
    if (this.#isCounting && begun !== -1 && delivered !== -1) {
      sample.add((delivered - begun) / TICKS_PER_SECOND, (tick - delivered) / TICKS_PER_SECOND, atHeat);
    }
    parison.begun = -1;
    parison.delivered = -1;
  }

  /** Runs on, and reads on; with `keepsMarks` whoever asks for them later still finds them. */
  runUntil(tick: number, keepsMarks: boolean): void {
    while (this.#simulation.now < tick) {
      this.#simulation.runUntil(Math.min(tick, this.#simulation.now + this.#slice));
      const { marks } = this.#simulation;
      for (; this.#read < marks.ticks.length; this.#read++)
        this.#readers[marks.counters[this.#read]!]?.(marks.ticks[this.#read]!);
      if (!keepsMarks) this.#forget();
    }
  }

  /** Marks of other things, such as stops, are few and stay. */
  #forget(): void {
    const { marks } = this.#simulation;
    const others = [...marks.counters.keys()].filter((i) => this.#readers[marks.counters[i]!] === undefined);
    marks.ticks = others.map((i) => marks.ticks[i]!);
    marks.counters = others.map((i) => marks.counters[i]!);
    this.#read = others.length;
  }

  /** From here on parisons count, those under way as well; what is hot stays hot. The simulation has just let go of its marks. */
  restartObservation(): void {
    this.#read = 0;
    this.#isCounting = true;
  }

  records(): readonly ParisonRecord[] {
    return this.#stations.map(({ sample }) => sample.record());
  }
}
