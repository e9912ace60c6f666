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

  /** Ticks since the observation began by class: the lowest that any resource is in counts; up to date after `settle`. */
  get jointTicks(): Float64Array {
    return this.#interpreter.resources.joint.ticks;
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
    this.#interpreter.runUntil(tick);
  }

  /** Forgets what was observed so far; the system goes on as it is. */
  restartObservation(): void {
    const { resources, tally } = this.#interpreter;
    this.settle();
    resources.ticks.fill(0);
    tally.restart();
    resources.joint.restart(this.now);
    resources.periods.restart(this.now);
    this.#interpreter.restartChain();
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
    this.#interpreter.keepsChain = true;
    collect();
    for (let instant = 0; heads.size < processes.length && instant < runOnInstants && !this.standstill; instant++) {
      const first = events.first();
      if (first === -1) break;
      this.runUntil(events.due[first]!);
      collect();
    }
    return processes.map((process) => this.chain.totals(heads.get(process) ?? this.chain.last, end));
  }
}
