// What is counted: how often each counter rose, when first and last, and every rise of those that are marked.
import type { Program } from "./program.ts";

export class Tally {
  /** Each counter since the observation began. */
  readonly counts: Float64Array;
  /** Tick at which each counter first and last rose since then, -1 where it did not. */
  readonly firstRise: Float64Array;
  readonly lastRise: Float64Array;
  /** Ticks at which a marked counter was raised, and which one. */
  readonly marks: { ticks: number[]; counters: number[] } = { ticks: [], counters: [] };
  private readonly marked: Uint8Array;
  private readonly amounts: Float64Array;
  private readonly clock: Float64Array;

  constructor({ counters, steps }: Program, clock: Float64Array, marked: readonly string[]) {
    this.clock = clock;
    this.counts = new Float64Array(counters.length);
    this.firstRise = new Float64Array(counters.length).fill(-1);
    this.lastRise = new Float64Array(counters.length).fill(-1);
    this.marked = Uint8Array.from(counters, (name) => (marked.includes(name) ? 1 : 0));
    this.amounts = steps.amounts;
  }

  count(counter: number, amount: number): void {
    const tick = this.clock[0]!;
    this.counts[counter]! += this.amounts[amount]!;
    if (this.firstRise[counter] === -1) this.firstRise[counter] = tick;
    this.lastRise[counter] = tick;
    if (this.marked[counter] === 0) return;
    this.marks.ticks.push(tick);
    this.marks.counters.push(counter);
  }

  restart(): void {
    this.counts.fill(0);
    this.firstRise.fill(-1);
    this.lastRise.fill(-1);
    this.marks.ticks.length = 0;
    this.marks.counters.length = 0;
  }
}
