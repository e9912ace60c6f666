// The simulation: runs a program against the clock, one instant after another, and hands over what was kept of it.
import type { LongestActive } from "./activePeriods.ts";
import type { BindingChain, ChainTotals } from "./bindingChain.ts";
import { Interpreter, type FlowRecorder, type SimulationOptions } from "./interpreter.ts";
import { NEEDING } from "./processStates.ts";
import type { Program } from "./program.ts";
import type { Standstill } from "./standstill.ts";
import type { Tally } from "./tally.ts";

export type { FlowRecorder, SimulationOptions };

/** Instants after the end of the observation within which a wait is expected to be over. */
const runOnInstants = 20_000;

export class Simulation {
  readonly program: Program;
  readonly chain: BindingChain;
  /** Each counter since the observation began; the ticks at which it first and last rose; every rise of a marked one. */
  readonly counts: Tally["counts"];
  readonly firstRise: Tally["firstRise"];
  readonly lastRise: Tally["lastRise"];
  readonly marks: Tally["marks"];
  readonly #interpreter: Interpreter;
  /** The observation is over: the chain must keep every node, since it is still cut at the end of the observation. */
  #runsOn = false;

  constructor(program: Program, options: SimulationOptions, marked: readonly string[] = []) {
    this.program = program;
    this.#interpreter = new Interpreter(program, options, marked);
    this.chain = this.#interpreter.chain;
    ({
      counts: this.counts,
      firstRise: this.firstRise,
      lastRise: this.lastRise,
      marks: this.marks,
    } = this.#interpreter.tally);
    this.#beginAll(options.log);
  }

  get now(): number {
    return this.#interpreter.clock[0]!;
  }

  get standstill(): Standstill | undefined {
    return this.#interpreter.standstill;
  }

  /** Ticks in each state since the observation began; up to date after `settle`. */
  get stateTicks(): Float64Array {
    return this.#interpreter.resources.ticks;
  }

  /** By resource: ticks since the observation began in which its active period was the longest of all. */
  longestActive(): readonly LongestActive[] {
    return this.#interpreter.resources.periods.longest(this.now);
  }

  #beginAll(log: SimulationOptions["log"]): void {
    const { tokens } = this.#interpreter;
    this.program.table.places.forEach((place, number) => {
      for (let i = 0; i < place.tokens; i++)
        tokens.put(number, -1, place.cargo === "numbered" ? i : (place.cargo ?? 0));
    });
    this.program.firstState.forEach((state, resource) => log?.add(0, resource, state, -1, -1, -1, -1, 0));
    this.program.beginsAt.forEach((row, process) => this.#interpreter.reach(process, row));
  }

  /** Runs every instant up to and including `tick`, or until nothing can happen any more. */
  runUntil(tick: number): void {
    const interpreter = this.#interpreter;
    const { events, lines, clock, chain } = interpreter;
    while (interpreter.standstill === undefined) {
      const process = events.first();
      const due = process === -1 ? Infinity : events.due[process]!;
      // Whatever completes at an instant does so before anybody is served at it.
      if (due > clock[0]!) {
        const place = lines.nextChanged();
        if (place !== -1) {
          interpreter.serve(place);
          continue;
        }
        if (process === -1) interpreter.stuck("deadlock");
        if (due > tick) break;
        clock[0] = due;
        interpreter.hops = 0;
        if (chain.isFull && !this.#runsOn) this.#renumber(chain.fold(this.#liveNodes()));
      }
      interpreter.complete(process);
    }
    clock[0] = tick;
  }

  /** Forgets what was observed so far; the system goes on as it is. */
  restartObservation(): void {
    const { resources, tally } = this.#interpreter;
    this.settle();
    resources.ticks.fill(0);
    tally.restart();
    resources.periods.restart(this.now);
    this.#renumber(this.chain.restart(this.#liveNodes(), this.now));
  }

  /** Books the time since each resource's last change of state. */
  settle(): void {
    this.#interpreter.resources.settle();
  }

  /**
   * The binding chain of each process from `now` back to the beginning of the observation; call it after everything else has
   * been read. What binds a process that waits is known only when its wait is over: the system runs on until then. One that
   * goes on waiting, since others are always served before it, is taken to wait for the step that started last.
   */
  chainsOf(processes: readonly number[]): ChainTotals[] {
    const end = this.now;
    const { events, processes: states } = this.#interpreter;
    const heads = new Map<number, number>();
    const collect = (): void => {
      for (const process of processes) {
        if (!heads.has(process) && states.phase[process] !== NEEDING) heads.set(process, states.head[process]!);
      }
    };
    this.#runsOn = true;
    collect();
    for (let instant = 0; heads.size < processes.length && instant < runOnInstants && !this.standstill; instant++) {
      const first = events.first();
      if (first === -1) break;
      this.runUntil(events.due[first]!);
      collect();
    }
    return processes.map((process) => this.chain.totals(heads.get(process) ?? this.chain.last, end));
  }

  #liveNodes(): number[] {
    return [...this.#interpreter.processes.head, ...this.#interpreter.tokens.liveNodes()];
  }

  #renumber(numbers: Int32Array): void {
    const { head } = this.#interpreter.processes;
    for (let process = 0; process < head.length; process++)
      if (head[process] !== -1) head[process] = numbers[head[process]!]!;
    this.#interpreter.tokens.renumber(numbers);
  }
}
