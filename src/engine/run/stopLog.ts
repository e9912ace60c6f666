// The stops of a run, one record each: when it began, when its repair began, and when it ended.
import type { StopMark } from "#engine/compiler/stepTable.ts";

/** Ticks; null where the run has not come so far. */
export interface LoggedStop {
  /** Its number in the step table. */
  readonly stop: number;
  readonly begin: number;
  readonly repair: number | null;
  readonly end: number | null;
}

type Growing = { -readonly [Key in keyof LoggedStop]: LoggedStop[Key] };

export class StopLog {
  #records: Growing[] = [];
  /** By number: the stop that goes on. */
  readonly #open = new Map<number, Growing>();
  #carried: readonly LoggedStop[] = [];

  /** In the order in which they began; one that began before the observation is left out. */
  get records(): readonly LoggedStop[] {
    return this.#records;
  }

  /** Stops that had begun before the observation and went on in it. */
  get carried(): readonly LoggedStop[] {
    return this.#carried;
  }

  take({ stop, phase }: StopMark, tick: number): void {
    if (phase === "begin") this.#begin(stop, tick);
    const record = this.#open.get(stop);
    if (!record) return;
    if (phase === "repair") record.repair = tick;
    if (phase !== "end") return;
    record.end = tick;
    this.#open.delete(stop);
  }

  #begin(stop: number, tick: number): void {
    const record: Growing = { stop, begin: tick, repair: null, end: null };
    this.#records.push(record);
    this.#open.set(stop, record);
  }

  /** Forgets all stops that are over. Those that go on are carried into the observation. */
  restart(): void {
    this.#records = [];
    this.#carried = [...this.#open.values()];
  }
}
