// Where each process stands: its step, what it is doing, what it carries and which completion bound it last.
import type { Memory } from "./memory.ts";
import type { Program } from "./program.ts";
import { CARGO, NO_REGISTER } from "./row.ts";

/** What a process is doing: between steps, waiting for needs, in a timed step, in one that is held or whose clock stands still. */
export const IDLE = 0;
export const NEEDING = 1;
export const TIMED = 2;
export const HELD = 3;
export const STILL = 4;

/** One array for each fact, one place in it for each process: the loop touches numbers only. */
export class ProcessStates {
  readonly count: number;
  readonly phase: Int32Array;
  readonly row: Int32Array;
  readonly cargo: Int32Array;
  readonly hand: Int32Array;
  readonly cycle: Int32Array;
  /** Where in the code it goes on when its time is up. */
  readonly resumesAt: Int32Array;
  /** Node of the chain that bound the process last, and the tick at which that step was complete. */
  readonly head: Int32Array;
  readonly headTime: Float64Array;
  readonly tied: Int32Array;
  /** Ticks left of a step that is held or whose clock stands still, and the tick at which it was held. */
  readonly remaining: Float64Array;
  readonly pausedAt: Float64Array;
  readonly askedAt: Float64Array;
  readonly servedAt: Float64Array;
  readonly priority: Float64Array;
  /** What each keeps of its scale, in whole millionths. */
  readonly kept: Float64Array;

  constructor(program: Program, memory: Memory) {
    const { processes } = program.table;
    this.count = processes.length;
    const none = processes.map(() => 0);
    const minus = processes.map(() => -1);
    this.phase = memory.takeWholes(none);
    this.row = memory.takeWholes(none);
    this.cargo = memory.takeWholes(processes.map((process) => process.cargo ?? 0));
    this.hand = memory.takeWholes(minus);
    this.cycle = memory.takeWholes(none);
    this.resumesAt = memory.takeWholes(none);
    this.head = memory.takeWholes(minus);
    this.headTime = memory.takeReals(none);
    this.tied = memory.takeWholes(none);
    this.remaining = memory.takeReals(none);
    this.pausedAt = memory.takeReals(none);
    this.askedAt = memory.takeReals(none);
    this.servedAt = memory.takeReals(minus);
    this.kept = memory.takeReals(none);
    this.priority = memory.takeReals(processes.map((process) => process.priority ?? 0));
  }

  /** What `by` adds to the first of a family. */
  register(process: number, by: number): number {
    return by === NO_REGISTER ? 0 : by === CARGO ? this.cargo[process]! : this.hand[process]!;
  }
}
