// Runs a cell until the wanted good parts are made, to the instant of the last one.
import type { Simulation } from "#engine/run/simulation.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import { rejectReasons } from "#cell/layers/withQuality.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { goodCounter, partsOf, rejectsOf } from "#cell/words/cycleNames.ts";
import { runCell } from "./runCell.ts";

/** Good parts of a product; null: of all stations, after the last server. */
interface WantedParts {
  readonly product: string | null;
  readonly quantity: number;
}

interface WantedRun {
  readonly replication: number;
  readonly wanted: readonly WantedParts[];
  /** Expected ticks for one good part of the cell; a wrong value costs only computing time. */
  readonly ticksAPart: number;
  /** Tick at which all good parts are counted as well, within the length of the run; null: none. */
  readonly countAt: number | null;
  /** Whether the cell goes on after its last wanted part to be counted at that tick. */
  readonly goesOn: boolean;
}

export interface QuantityRecord {
  /** Tick of the last part of each quantity; null where the run ended first. */
  readonly reached: readonly (number | null)[];
  /** Good parts of all quantities at `countAt`; null where that was not reached. */
  readonly counted: number | null;
  /** Good parts of each quantity at the end of the record. */
  readonly good: readonly number[];
  /** Up to the last part of all; without critical path, quarters and single shots. */
  readonly record: CellRecord;
}

/** Good parts still to be made from which on no instant is passed over. */
const fewParts = 16;
/** Part of the expected time that the run goes on without a look, and the divisor where that was too far. */
const firstStride = 0.5;
const finer = 16;

/** The same plan and replication always give the same record: a run that went too far is made again with more looks. */
export function runQuantities(plan: CellPlan, run: WantedRun): QuantityRecord {
  for (let stride = firstStride; ; stride /= finer) {
    const pursuit = new Pursuit(plan, run, stride);
    const record = runCell(plan, {
      replication: run.replication,
      warmup: 0,
      keepsShots: false,
      quarters: "none",
      keepsChain: false,
      runOn: (simulation) => (tick) => pursuit.runOn(simulation, tick),
    });
    if (pursuit.wentTooFar) continue;
    const good = pursuit.good();
    return { reached: pursuit.reached, good, record, counted: pursuit.countLater() };
  }
}

/** The way of one run to its quantities. */
class Pursuit {
  readonly reached: (number | null)[];
  wentTooFar = false;
  readonly #run: WantedRun;
  readonly #stride: number;
  /** Of each quantity: the counters of its parts and of its rejects. */
  readonly #counters: readonly GoodCounters[];
  /** Good parts of each quantity at the last look. */
  #made: readonly number[];
  #simulation: Simulation | undefined;
  #counted: number | null = null;

  constructor(plan: CellPlan, run: WantedRun, stride: number) {
    this.#run = run;
    this.#stride = stride;
    this.#counters = run.wanted.map(({ product }) => countersOf(plan, product));
    this.reached = run.wanted.map(() => null);
    this.#made = run.wanted.map(() => 0);
  }

  /** To the tick or to the last wanted part, whichever is first. */
  runOn(simulation: Simulation, tick: number): void {
    this.#simulation = simulation;
    // What waits at the start is served in the first instant, and only then is the next one known.
    simulation.runUntil(simulation.now);
    while (simulation.now < tick && !this.wentTooFar && this.reached.includes(null)) this.#advance(simulation, tick);
  }

  good(): readonly number[] {
    const counts = this.#simulation?.counts ?? new Float64Array();
    const sum = (numbers: readonly number[]): number => numbers.reduce((total, i) => total + (counts[i] ?? 0), 0);
    return this.#counters.map(({ parts, rejects }) => sum(parts) - sum(rejects));
  }

  /** Goes on beyond the last part where the count is later. Nothing of the record is read after that. */
  countLater(): number | null {
    const { countAt, goesOn } = this.#run;
    if (countAt === null || this.#counted !== null || !goesOn) return this.#counted;
    this.#simulation?.runUntil(countAt);
    return this.#allGood();
  }

  #advance(simulation: Simulation, tick: number): void {
    const { wanted, ticksAPart, countAt } = this.#run;
    const left = Math.min(
      ...wanted.map(({ quantity }, i) => (this.reached[i] === null ? quantity - this.#made[i]! : Infinity)),
    );
    const pace = left > fewParts ? Math.floor(left * ticksAPart * this.#stride) : 0;
    const instant = simulation.nextTick;
    const next = Math.min(tick, Math.max(instant, simulation.now + pace));
    const isCountDue = countAt !== null && simulation.now < countAt && countAt <= next;
    const at = isCountDue ? countAt : next;
    simulation.runUntil(at);
    const made = this.good();
    this.#made = made;
    wanted.forEach(({ quantity }, i) => {
      if (this.reached[i] !== null || made[i]! < quantity) return;
      if (at > instant) this.wentTooFar = true;
      this.reached[i] = at;
    });
    if (isCountDue) this.#counted = this.#allGood();
  }

  #allGood(): number {
    return this.good().reduce((sum, parts) => sum + parts, 0);
  }
}

interface GoodCounters {
  readonly parts: readonly number[];
  readonly rejects: readonly number[];
}

/** Servers do not distinguish products: where only some stations make it, the parts that passed the checks at the mold count. */
function countersOf({ program, scenario }: CellPlan, product: string | null): GoodCounters {
  const numbers = (names: readonly string[]): readonly number[] =>
    names.map((name) => program.counters.indexOf(name)).filter((number) => number !== -1);
  const makers = scenario.stations.filter((station) => product === null || station.product === product);
  if (scenario.takeaway && makers.length === scenario.stations.length) {
    return { parts: numbers([goodCounter]), rejects: [] };
  }
  return {
    parts: numbers(makers.map(({ name }) => partsOf(name))),
    rejects: numbers(makers.flatMap(({ name }) => rejectReasons.map((reason) => rejectsOf(name, reason)))),
  };
}
