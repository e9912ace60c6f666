// The part of a log whose own times a trace-driven run takes: all of a short log, the first part of a long one.
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { LineLog, type Stretch } from "./lineLog.ts";

/** A trace needs each time by itself. So many rows show a wrong order of serving. */
export const mostTraced = 200_000;

export class TracedPart {
  readonly #most: number;
  #records: StepRecord[] = [];
  #until = Infinity;

  constructor(most = mostTraced) {
    this.#most = most;
  }

  /** By their time, since a log may hold one station after the other: above the limit the later half is left out. */
  take(record: StepRecord): void {
    if (record.start === undefined || record.start >= this.#until) return;
    this.#records.push(record);
    if (this.#records.length <= this.#most) return;
    const starts = Float64Array.from(this.#records, ({ start = 0 }) => start).toSorted();
    this.#until = starts[Math.floor(starts.length / 2)]!;
    this.#records = this.#records.filter(({ start = 0 }) => start < this.#until);
  }

  get rows(): number {
    return this.#records.length;
  }

  get isWhole(): boolean {
    return this.#until === Infinity;
  }

  stretches(): readonly Stretch[] {
    const line = new LineLog();
    for (const record of this.#records) line.take(record);
    return line.stretches();
  }
}
