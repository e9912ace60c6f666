// The simulation: runs a program against the clock, one instant after another, and hands over what was kept of it.
import { BindingChain, type ChainTotals } from "./bindingChain.ts";
import * as core from "./core/numbers.ts";
import { coreImage } from "./coreImage.ts";
import type { EventLog } from "./eventLog.ts";
import { meanLaws } from "./lawTable.ts";
import { longestActive, type LongestActive } from "./longestActive.ts";
import { openCore, type Core } from "./openCore.ts";
import type { Program } from "./program.ts";
import { describeStandstill, type Standing, type Standstill } from "./standstill.ts";
import { openStreams } from "./stream.ts";

export interface SimulationOptions {
  readonly seed: string;
  readonly replication: number;
  /** Every time is the mean of its law: nothing is drawn. */
  readonly atMeans?: boolean;
  readonly log?: EventLog;
  readonly flow?: FlowRecorder;
  /** By state: 1 where a resource counts as at work when its active periods are told; the working states if not given. */
  readonly isActive?: Uint8Array;
  /** Class of each state, for the time that all resources together spend; all in one where absent. */
  readonly classOf?: Uint8Array;
  /** Nodes of the chain after which it is folded: what it holds does not depend on it. */
  readonly foldAt?: number;
}

/** Told of every step that starts and of every completion that it needed; for the event graph. */
export interface FlowRecorder {
  started(node: number, row: number, tick: number, ticks: number): void;
  needed(node: number, before: number): void;
}

/** Nodes of the chain held before it is folded; few enough to stay in a processor's fast memory. */
const usualFoldAt = 1 << 13;

/** Instants after the end of the observation within which a wait is expected to be over. */
const runOnInstants = 20_000;

export class Simulation {
  readonly program: Program;
  readonly chain: BindingChain;
  /** Ticks at which a marked counter was raised, and which one. */
  readonly marks: { ticks: number[]; counters: number[] } = { ticks: [], counters: [] };
  #standstill: Standstill | undefined;
  readonly #core: Core;
  readonly #classes: number;

  constructor(program: Program, options: SimulationOptions, marked: readonly string[] = []) {
    this.program = program;
    const { log, flow } = options;
    this.#core = openCore({
      logged: log ? log.add.bind(log) : nothing,
      started: flow ? flow.started.bind(flow) : nothing,
      needed: flow ? flow.needed.bind(flow) : nothing,
      exactTicks: (law, u) => program.laws.samplers[law]!.ticks(u),
    });
    this.chain = new BindingChain(this.#core, program.activities.length);
    this.#classes = Math.max(0, ...(options.classOf ?? [])) + 1;
    this.#takeIn(options, marked);
    this.#core.open(program.activities.length, this.#classes, options.foldAt ?? usualFoldAt, log ? 1 : 0, flow ? 1 : 0);
    this.#beginAll(log);
  }

  get now(): number {
    return this.#core.clock();
  }

  get standstill(): Standstill | undefined {
    return this.#standstill;
  }

  /** Ticks in each state since the observation began; up to date after `settle`. */
  get stateTicks(): Float64Array {
    return this.#reals(this.#core.stateTicksAt(), this.program.states.length);
  }

  /** Ticks since the observation began by class: the lowest that any resource is in counts; up to date after `settle`. */
  get jointTicks(): Float64Array {
    return this.#reals(this.#core.jointTicksAt(), this.#classes);
  }

  /** Each counter since the observation began. */
  get counts(): Float64Array {
    return this.#reals(this.#core.countsAt(), this.program.counters.length);
  }

  /** Tick at which each counter first and last rose since then, -1 where it did not. */
  get firstRise(): Float64Array {
    return this.#reals(this.#core.firstRiseAt(), this.program.counters.length);
  }

  get lastRise(): Float64Array {
    return this.#reals(this.#core.lastRiseAt(), this.program.counters.length);
  }

  /** By resource: ticks since the observation began in which its active period was the longest of all. */
  longestActive(): readonly LongestActive[] {
    const own = this.#core;
    const resources = this.program.firstState.length;
    const [start, end] = [this.#reals(own.periodStartAt(), resources), this.#reals(own.periodEndAt(), resources)];
    const past = own.pastPeriods();
    const [resource, from] = [this.#wholes(own.pastResourceAt(), past), this.#reals(own.pastStartAt(), past)];
    const until = this.#reals(own.pastEndAt(), past);
    const periods = Array.from(resource, (each, i) => ({ resource: each, start: from[i]!, end: until[i]! }));
    const goingOn = Array.from(start, (begun, each) => ({ resource: each, start: begun, end: Math.min(this.now, end[each]!) }));
    return longestActive(resources, [...periods, ...goingOn.filter((period) => period.start >= 0 && period.end > period.start)]);
  }

  /** Runs every instant up to and including `tick`, or until nothing can happen any more. */
  runUntil(tick: number): void {
    let isOver = false;
    while (!isOver) {
      isOver = this.#core.runUntil(tick) === 0;
      this.#takeMarks();
    }
    const kind = this.#core.stuck();
    if (kind === 0) return;
    this.#standstill ??= describeStandstill(kind === core.DEADLOCK ? "deadlock" : "zero-time loop", this.#standing());
  }

  /** Forgets what was observed so far; the system goes on as it is. */
  restartObservation(): void {
    this.#core.restart();
    this.marks.ticks.length = 0;
    this.marks.counters.length = 0;
  }

  /** Books the time since each resource's last change of state. */
  settle(): void {
    this.#core.settle();
  }

  /**
   * The binding chain of each process from `now` back to the beginning of the observation; call it after everything else has
   * been read. What binds a process that waits is known only when its wait is over: the system runs on until then. One that
   * goes on waiting, since others are always served before it, is taken to wait for the step that started last.
   */
  chainsOf(processes: readonly number[]): ChainTotals[] {
    const end = this.now;
    const own = this.#core;
    const count = this.program.ownResource.length;
    const heads = new Map<number, number>();
    const collect = (): void => {
      const [phases, nodes] = [this.#wholes(own.phaseAt(), count), this.#wholes(own.headAt(), count)];
      for (const process of processes) {
        if (!heads.has(process) && phases[process] !== core.NEEDING) heads.set(process, nodes[process]!);
      }
    };
    own.keepChain();
    collect();
    for (let instant = 0; heads.size < processes.length && instant < runOnInstants && own.stuck() === 0; instant++) {
      const first = own.firstDue();
      if (first === -1) break;
      this.runUntil(this.#reals(own.dueAt(), count)[first]!);
      collect();
    }
    return processes.map((process) => this.chain.totals(heads.get(process) ?? this.chain.last, end));
  }

  #takeIn({ seed, replication, atMeans, isActive, classOf }: SimulationOptions, marked: readonly string[]): void {
    const { streams, laws, states, counters, isWorking } = this.program;
    const image = coreImage(this.program);
    const active = isActive ?? isWorking;
    const meaning = states.map(
      (_, i) => isWorking[i]! * core.WORKING + active[i]! * core.ACTIVE + (classOf?.[i] ?? 0) * core.CLASS,
    );
    for (const [section, numbers] of image.wholes) this.#writeWholes(section, numbers);
    for (const [section, numbers] of image.reals) this.#writeReals(section, numbers);
    this.#writeWholes(core.MEANING, meaning);
    this.#writeWholes(core.MARKED, counters.map((name) => (marked.includes(name) ? 1 : 0)));
    this.#writeReals(core.STREAMS, openStreams(seed, replication, streams));
    this.#writeReals(core.LAWS, atMeans ? meanLaws(laws) : laws.numbers);
  }

  #writeWholes(section: number, numbers: ArrayLike<number>): void {
    this.#wholes(this.#core.wholes(section, numbers.length), numbers.length).set(numbers);
  }

  #writeReals(section: number, numbers: ArrayLike<number>): void {
    this.#reals(this.#core.reals(section, numbers.length), numbers.length).set(numbers);
  }

  #beginAll(log: EventLog | undefined): void {
    this.program.table.places.forEach((place, number) => {
      for (let i = 0; i < place.tokens; i++)
        this.#core.put(number, -1, place.cargo === "numbered" ? i : (place.cargo ?? 0));
    });
    this.program.firstState.forEach((state, resource) => log?.add(0, resource, state, -1, -1, -1, -1, 0));
    this.program.beginsAt.forEach((row, process) => this.#core.reach(process, row));
    this.#takeMarks();
  }

  #takeMarks(): void {
    const count = this.#core.marks();
    if (count === 0) return;
    const [ticks, counters] = [this.#core.markTicksAt(), this.#core.markCountersAt()];
    for (const tick of this.#reals(ticks, count)) this.marks.ticks.push(tick);
    for (const counter of this.#wholes(counters, count)) this.marks.counters.push(counter);
    this.#core.forgetMarks();
  }

  #standing(): Standing {
    const own = this.#core;
    const { length } = this.program.ownResource;
    return {
      tick: own.stuckSince(),
      program: this.program,
      phase: this.#wholes(own.phaseAt(), length),
      row: this.#wholes(own.rowAt(), length),
      registers: { cargo: this.#wholes(own.cargoAt(), length), hand: this.#wholes(own.handAt(), length) },
      tokens: this.#wholes(own.sizesAt(), this.program.takers.length),
      stopCount: this.#wholes(own.stopCountAt(), this.program.firstState.length),
    };
  }

  // What is read here may move when the core runs on: it is looked up each time.

  #wholes(at: number, length: number): Int32Array {
    return new Int32Array(this.#core.memory.buffer, at, length);
  }

  #reals(at: number, length: number): Float64Array {
    return new Float64Array(this.#core.memory.buffer, at, length);
  }
}

function nothing(): void {}
