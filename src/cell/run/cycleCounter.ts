// Counts the times from one delivery of a station to the next, from the marks of a run.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { MarkReader } from "#engine/run/simulation.ts";
import type { CountedTimes } from "#cell/records/countedTimes.ts";
import { TimeCounter } from "./timeCounter.ts";

const NONE = -1;

export class CycleCounter {
  /** With the counter whose rises are the deliveries. */
  readonly reader: readonly [counter: string, reader: MarkReader];
  readonly #times = new TimeCounter();
  #before = NONE;

  constructor(counter: string) {
    this.reader = [counter, (tick) => this.#deliver(tick)];
  }

  #deliver(tick: number): void {
    if (this.#before !== NONE) this.#times.add(tick - this.#before);
    this.#before = tick;
  }

  /** The first delivery from now on ends no cycle. */
  restart(): void {
    this.#times.restart();
    this.#before = NONE;
  }

  counted(): CountedTimes {
    return this.#times.counted(TICKS_PER_SECOND);
  }
}
