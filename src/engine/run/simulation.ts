// The simulation: runs a program instant by instant and returns its observations.
import { CriticalPath, type ChainTotals } from "./criticalPath.ts";
import * as core from "#core/border/numbers.ts";
import type { EventLog } from "./eventLog.ts";
import { exactDraws } from "./exactDraws.ts";
import { meanDistributions } from "#engine/distributions/distributionTable.ts";
import { LongestPeriods, type ActivePeriod, type LongestActive } from "./longestActive.ts";
import { openCore, type Core } from "./openCore.ts";
import type { Program } from "#engine/compiler/program.ts";
import type { PlaceSpec } from "#engine/compiler/stepTable.ts";
import { standstillOf, type Standstill } from "./standstill.ts";
import { StopLog } from "./stopLog.ts";
import { firstUniform, openStreams } from "#engine/distributions/stream.ts";

export interface SimulationOptions {
  readonly seed: string;
  readonly replication: number;
  /** Every time is the mean of its distribution: nothing is drawn. */
  readonly atMeans?: boolean;
  readonly log?: EventLog;
  readonly flow?: FlowRecorder;
  /** Counters and their readers, which are called at each rise during the run; several readers of one counter in their order. */
  readonly readers?: readonly (readonly [counter: string, reader: MarkReader])[];
  /** By state: 1 where it is part of an active period; the working states if not given. */
  readonly isActive?: Uint8Array;
  /** Class of each state, for the time that all resources together spend; all in one where absent. */
  readonly classOf?: Uint8Array;
  /** Nodes of the chain after which it is folded: what it holds does not depend on it. */
  readonly foldAt?: number;
  /** Processes up to which the earliest is found by a scan of all, instead of a heap: no result depends on it. */
  readonly scanUpTo?: number;
}

/** Is handed the tick of each rise of its counter. */
export type MarkReader = (tick: number) => void;

/** Is called for every step that starts and for every completion that it needed; for the event graph. */
export interface FlowRecorder {
  started(node: number, row: number, tick: number, ticks: number): void;
  needed(node: number, before: number): void;
}

/** Nodes of the chain held before it is folded; few enough to stay in a processor's fast memory. */
const usualFoldAt = 1 << 11;

/** Up to this many pending times a scan of all beats a heap (measured: the benchmark prints both). */
const usualScanUpTo = 16;

/** A mark in memory, counted in numbers of 8 and of 4 bytes. */
const REALS_A_MARK = core.MARK_SIZE / 8;
const WHOLES_A_MARK = core.MARK_SIZE / 4;
const COUNTER = core.MARK_COUNTER / 4;

/** Instants after the end of the observation within which a wait is expected to be over. */
const runOnInstants = 20_000;

export class Simulation {
  readonly program: Program;
  readonly chain: CriticalPath;
  /** Ticks at which a marked counter without a reader was raised, and which one. */
  readonly marks: { ticks: number[]; counters: number[] } = { ticks: [], counters: [] };
  /** The stops that the table marks. */
  readonly stops = new StopLog();
  #standstill: Standstill | undefined;
  readonly #core: Core;
  #periods: LongestPeriods;
  readonly #log: EventLog | undefined;
  readonly #classes: number;
  /** By counter. */
  #readers: readonly (MarkReader | undefined)[];

  constructor(program: Program, options: SimulationOptions, marked: readonly string[] = []) {
    this.program = program;
    const { log, flow, readers = [] } = options;
    this.#log = log;
    this.#core = openCore({
      started: (node, row, tick, ticks) => flow?.started(node, row, tick, ticks),
      needed: (node, before) => flow?.needed(node, before),
      exactTicks: exactDraws(program.image.distributions.samplers),
    });
    this.chain = new CriticalPath(this.#core, program.activities.length);
    this.#periods = this.#noPeriods();
    this.#classes = Math.max(0, ...(options.classOf ?? [])) + 1;
    this.#readers = program.counters.map((name, number) => {
      const mark = program.stopMarks.get(number);
      return mark ? (tick) => this.stops.take(mark, tick) : inTurn(readersOf(name, readers));
    });
    this.#takeIn(options, marked);
    const { foldAt = usualFoldAt, scanUpTo = usualScanUpTo } = options;
    this.#core.open(program.activities.length, this.#classes, foldAt, scanUpTo, log ? 1 : 0, flow ? 1 : 0);
    this.#beginAll(options);
  }

  get now(): number {
    return this.#core.clock();
  }

  /** Tick of the next instant at which something ends; Infinity where nothing can happen any more. */
  get nextTick(): number {
    return this.#core.nextTick();
  }

  get standstill(): Standstill | undefined {
    return this.#standstill;
  }

  /** Ticks in each state since the observation began; up to date after `settle`. */
  get stateTicks(): Float64Array {
    return listOf(this.program.states.length, (number) => this.#core.ticksIn(number));
  }

  /** Ticks since the observation began by class: the lowest that any resource is in counts; up to date after `settle`. */
  get jointTicks(): Float64Array {
    return listOf(this.#classes, (number) => this.#core.ticksTogetherIn(number));
  }

  /** Each counter since the observation began. */
  get counts(): Float64Array {
    return listOf(this.program.counters.length, (number) => this.#core.countOf(number));
  }

  /** Tick at which each counter first and last rose since then, -1 where it did not. */
  get firstRise(): Float64Array {
    return listOf(this.program.counters.length, (number) => this.#core.firstRiseOf(number));
  }

  get lastRise(): Float64Array {
    return listOf(this.program.counters.length, (number) => this.#core.lastRiseOf(number));
  }

  /** By resource: ticks since the observation began in which its active period was the longest of all. */
  longestActive(): readonly LongestActive[] {
    return this.#periods.totals(this.#periodsOver(), this.#presentPeriods(), this.now);
  }

  /** Runs every instant up to and including `tick`, or until nothing can happen any more. */
  runUntil(tick: number): void {
    let isOver = false;
    while (!isOver) {
      isOver = this.#core.runUntil(tick) === 0;
      this.#takeRecords();
    }
    this.#standstill ??= standstillOf(this.#core, this.program);
  }

  /** Forgets what was observed so far; the system goes on as it is. */
  restartObservation(): void {
    this.#core.restart();
    this.marks.ticks.length = 0;
    this.marks.counters.length = 0;
    this.stops.restart();
    this.#periods = this.#noPeriods();
  }

  /** Books the time since each resource's last change of state. */
  settle(): void {
    this.#core.settle();
  }

  /**
   * The critical path of each process from `now` back to the beginning of the observation. Call it after all other results are
   * read: the simulation runs on until the waits at the end are over. A process that never gets its turn is taken to wait for the
   * step that started last. Counter readers and the log of stops are not called in that part of the run.
   */
  chainsOf(processes: readonly number[]): ChainTotals[] {
    const end = this.now;
    const own = this.#core;
    this.#readers = [];
    const heads = new Map<number, number>();
    const collect = (): void => {
      for (const process of processes) {
        if (!heads.has(process) && own.phaseOf(process) !== core.NEEDING) heads.set(process, own.headOf(process));
      }
    };
    own.keepChain();
    collect();
    for (
      let instant = 0;
      heads.size < processes.length && instant < runOnInstants && own.standstill() === 0;
      instant++
    ) {
      if (own.nextTick() === Infinity) break;
      this.runUntil(own.nextTick());
      collect();
    }
    return processes.map((process) => this.chain.totals(heads.get(process) ?? this.chain.last, end));
  }

  #takeIn({ seed, replication, atMeans, isActive, classOf }: SimulationOptions, marked: readonly string[]): void {
    const { image, streams, states, counters } = this.program;
    const meaning = states.map(({ kind }, i) => {
      const works = kind === "working";
      const active = isActive?.[i] ?? (works ? 1 : 0);
      // What is being set up works; what waits for the set-up of another does not.
      const working = works || (kind === "set-up" && active === 1) ? 1 : 0;
      const cause = this.program.causes[i]!;
      return working * core.WORKING + active * core.ACTIVE + cause * core.CAUSE + (classOf?.[i] ?? 0) * core.CLASS;
    });
    for (const [section, numbers] of image.wholes) this.#writeWholes(section, numbers);
    for (const [section, numbers] of image.reals) this.#writeReals(section, numbers);
    this.#writeWholes(core.MEANINGS, meaning);
    this.#writeWholes(
      core.MARKED,
      counters.map((name, number) => (marked.includes(name) || this.#readers[number] ? 1 : 0)),
    );
    this.#writeReals(core.STREAMS, openStreams(seed, replication, streams));
    this.#writeReals(
      core.DISTRIBUTIONS,
      atMeans ? meanDistributions(image.distributions) : image.distributions.numbers,
    );
  }

  #writeWholes(section: number, numbers: ArrayLike<number>): void {
    const at = this.#core.wholes(section, numbers.length);
    new Int32Array(this.#core.memory.buffer, at, numbers.length).set(numbers);
  }

  #writeReals(section: number, numbers: ArrayLike<number>): void {
    const at = this.#core.reals(section, numbers.length);
    new Float64Array(this.#core.memory.buffer, at, numbers.length).set(numbers);
  }

  #beginAll(options: SimulationOptions): void {
    this.program.table.places.forEach((place, number) => {
      const count = place.tokens + tokensAtRandom(place, options);
      for (let i = 0; i < count; i++) this.#core.put(number, place.cargo === "numbered" ? i : (place.cargo ?? 0));
    });
    this.program.beginsAt.forEach((row, process) => this.#core.reach(process, row));
    this.#takeRecords();
  }

  #noPeriods(): LongestPeriods {
    return new LongestPeriods(this.program.table.resources.length);
  }

  #periodsOver(): readonly ActivePeriod[] {
    const own = this.#core;
    return Array.from({ length: own.periods() }, (_, i) => ({
      resource: own.periodResource(i),
      start: own.periodStart(i),
      end: own.periodEnd(i),
    }));
  }

  /** The present or last one of each resource. */
  #presentPeriods(): readonly ActivePeriod[] {
    const own = this.#core;
    return this.program.table.resources
      .map((_, resource) => ({ resource, start: own.ownPeriodStart(resource), end: own.ownPeriodEnd(resource) }))
      .filter(({ start }) => start >= 0);
  }

  #takePeriods(): void {
    this.#periods.take(this.#periodsOver(), this.#presentPeriods(), this.now);
    this.#core.forgetPeriods();
  }

  #takeRecords(): void {
    this.#takeMarks();
    const own = this.#core;
    if (own.periods() >= core.MANY_PERIODS) this.#takePeriods();
    this.#log?.take(own.memory.buffer, own.entriesAt(), own.entries());
    own.forgetEntries();
  }

  #takeMarks(): void {
    const own = this.#core;
    const count = own.marks();
    const at = own.marksAt();
    // Read where they lie: a call for each would cost a short run more than the run itself.
    const ticks = new Float64Array(own.memory.buffer, at, count * REALS_A_MARK);
    const counters = new Int32Array(own.memory.buffer, at, count * WHOLES_A_MARK);
    const readers = this.#readers;
    for (let i = 0; i < count; i++) {
      const tick = ticks[i * REALS_A_MARK]!;
      const counter = counters[i * WHOLES_A_MARK + COUNTER]!;
      const reader = readers[counter];
      if (reader) reader(tick);
      else {
        this.marks.ticks.push(tick);
        this.marks.counters.push(counter);
      }
    }
    own.forgetMarks();
  }
}

function readersOf(name: string, readers: NonNullable<SimulationOptions["readers"]>): readonly MarkReader[] {
  return readers.filter(([counter]) => counter === name).map(([, reader]) => reader);
}

/** One after the other without a list to go through, since it is called at every mark. */
function inTurn(readers: readonly MarkReader[]): MarkReader | undefined {
  const [first, ...others] = readers;
  const then = others.length > 0 ? inTurn(others) : undefined;
  if (!first || !then) return first;
  return (tick) => {
    first(tick);
    then(tick);
  };
}

function listOf(length: number, valueOf: (number: number) => number): Float64Array {
  return Float64Array.from({ length }, (_, number) => valueOf(number));
}

/** One number of a stream of its own; none at mean times. */
function tokensAtRandom(
  { name, tokensBelow = 0 }: PlaceSpec,
  { seed, replication, atMeans }: SimulationOptions,
): number {
  return atMeans === true ? 0 : Math.floor(firstUniform(seed, replication, name, "tokens at the start") * tokensBelow);
}
