// Where each process stands: its step, what it is doing, what it carries and which completion bound it last.
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
  readonly phase: Uint8Array;
  readonly row: Int32Array;
  readonly cargo: Int32Array;
  readonly hand: Int32Array;
  readonly cycle: Int32Array;
  /** Node of the chain that bound the process last, and the tick at which that step was complete. */
  readonly head: Int32Array;
  readonly headTime: Float64Array;
  readonly tied: Uint8Array;
  /** Ticks left of a step that is held or whose clock stands still, and the tick at which it was held. */
  readonly remaining: Float64Array;
  readonly pausedAt: Float64Array;
  readonly askedAt: Float64Array;
  readonly servedAt: Float64Array;
  readonly priority: Float64Array;
  /** What each keeps of its scale, in whole millionths. */
  readonly kept: Float64Array;

  constructor(program: Program) {
    const { processes } = program.table;
    this.count = processes.length;
    this.phase = new Uint8Array(this.count);
    this.row = new Int32Array(this.count);
    this.cargo = Int32Array.from(processes, (process) => process.cargo ?? 0);
    this.hand = new Int32Array(this.count).fill(-1);
    this.cycle = new Int32Array(this.count);
    this.head = new Int32Array(this.count).fill(-1);
    this.headTime = new Float64Array(this.count);
    this.tied = new Uint8Array(this.count);
    this.remaining = new Float64Array(this.count);
    this.pausedAt = new Float64Array(this.count);
    this.askedAt = new Float64Array(this.count);
    this.servedAt = new Float64Array(this.count).fill(-1);
    this.kept = new Float64Array(this.count);
    this.priority = Float64Array.from(processes, (process) => process.priority ?? 0);
  }

  /** What `by` adds to the first of a family. */
  register(process: number, by: number): number {
    return by === NO_REGISTER ? 0 : by === CARGO ? this.cargo[process]! : this.hand[process]!;
  }
}
