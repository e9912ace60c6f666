// The event log: every change of a state as numbers in typed chunks, put into words only when somebody reads it.

const chunkSize = 1 << 14;

/** A state entered. Numbers are those of the program; -1 where there is none. */
export interface LoggedEvent {
  readonly time: number;
  readonly resource: number;
  readonly state: number;
  readonly row: number;
  readonly cycle: number;
  readonly hand: number;
  readonly boundBy: number;
  readonly boundTime: number;
}

const wholeFields = 6;
const timeFields = 2;

export class EventLog {
  readonly #wholes: Int32Array[] = [];
  readonly #times: Float64Array[] = [];
  #size = 0;

  get size(): number {
    return this.#size;
  }

  /** `boundBy` is the activity whose completion bound this start, `boundTime` the tick at which that activity had begun. */
  add(
    time: number,
    resource: number,
    state: number,
    row: number,
    cycle: number,
    hand: number,
    boundBy: number,
    boundTime: number,
  ): void {
    const at = this.#size++ % chunkSize;
    if (at === 0) {
      this.#wholes.push(new Int32Array(chunkSize * wholeFields));
      this.#times.push(new Float64Array(chunkSize * timeFields));
    }
    const wholes = this.#wholes[this.#wholes.length - 1]!;
    const times = this.#times[this.#times.length - 1]!;
    times[at * timeFields] = time;
    times[at * timeFields + 1] = boundTime;
    const first = at * wholeFields;
    wholes[first] = resource;
    wholes[first + 1] = state;
    wholes[first + 2] = row;
    wholes[first + 3] = cycle;
    wholes[first + 4] = hand;
    wholes[first + 5] = boundBy;
  }

  *[Symbol.iterator](): Generator<LoggedEvent> {
    for (let i = 0; i < this.#size; i++) {
      const chunk = Math.floor(i / chunkSize);
      const at = i % chunkSize;
      const wholes = this.#wholes[chunk]!.subarray(at * wholeFields, (at + 1) * wholeFields);
      const times = this.#times[chunk]!;
      yield {
        time: times[at * timeFields]!,
        resource: wholes[0]!,
        state: wholes[1]!,
        row: wholes[2]!,
        cycle: wholes[3]!,
        hand: wholes[4]!,
        boundBy: wholes[5]!,
        boundTime: times[at * timeFields + 1]!,
      };
    }
  }
}
