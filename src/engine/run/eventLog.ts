// The event log: every change of a state in the numbers of the core, put into words only when it is read.
import { ENTRY_SIZE } from "#core/border/numbers.ts";

/** A state entered. Numbers are those of the program; -1 where there is none. */
export interface LoggedEvent {
  readonly time: number;
  readonly resource: number;
  readonly state: number;
  readonly row: number;
  readonly cycle: number;
  readonly helper: number;
  /** The activity whose completion bound this start, and the tick at which that activity had begun. */
  readonly boundBy: number;
  readonly boundTime: number;
}

const realsEach = ENTRY_SIZE / 8;
const wholesEach = ENTRY_SIZE / 4;

export class EventLog {
  #chunks: ArrayBuffer[] = [];

  /** Copies `count` entries out of the core's memory. */
  take(memory: ArrayBuffer, at: number, count: number): void {
    if (count > 0) this.#chunks.push(memory.slice(at, at + count * ENTRY_SIZE));
  }

  /** What was logged since the last time: one who reads while the run goes on keeps the log short, however long the run is. */
  drain(): readonly LoggedEvent[] {
    const drained = [...this];
    this.#chunks = [];
    return drained;
  }

  *[Symbol.iterator](): Generator<LoggedEvent> {
    for (const chunk of this.#chunks) {
      const reals = new Float64Array(chunk);
      const wholes = new Int32Array(chunk);
      for (let real = 0, whole = 4; real < reals.length; real += realsEach, whole += wholesEach) {
        yield {
          time: reals[real]!,
          resource: wholes[whole]!,
          state: wholes[whole + 1]!,
          row: wholes[whole + 2]!,
          cycle: wholes[whole + 3]!,
          helper: wholes[whole + 4]!,
          boundBy: wholes[whole + 5]!,
          boundTime: reals[real + 1]!,
        };
      }
    }
  }
}
