// What a line did, from the records of a floor log or of a run of the model.
import type { StepRecord } from "#analysis/log/logRecord.ts";

/** All that a resource did under one name, in its order. */
export interface Doing {
  readonly station: string;
  readonly name: string;
  readonly kind: StepRecord["kind"];
  readonly starts: number[];
  readonly seconds: number[];
}

/** One stretch of time without a restart of the clock. */
export interface Stretch {
  readonly doings: ReadonlyMap<string, Doing>;
  readonly from: number;
  readonly until: number;
}

interface OpenStretch {
  readonly doings: Map<string, Doing>;
  /** By station: its last step, and whether a stop came after it. */
  readonly last: Map<string, { readonly doing: Doing; stopped: boolean }>;
  from: number;
  until: number;
}

export const doingKey = (station: string, name: string): string => JSON.stringify([station, name]);

/** After so many seconds without any row a new stretch begins. Common practice, no published source. */
const BREAK = 3600;

/** Keeps two numbers a row. */
export class LineLog {
  readonly #stretches: OpenStretch[] = [];
  readonly #current = new Map<string, OpenStretch>();
  #untimed = 0;

  take({ run, station, step, kind, seconds, start }: StepRecord): void {
    if (start === undefined) {
      this.#untimed += 1;
      return;
    }
    const stretch = this.#stretch(run, start);
    stretch.from = Math.min(stretch.from, start);
    stretch.until = Math.max(stretch.until, start + seconds);
    const last = stretch.last.get(station);
    // A step that goes on after a stop is one step.
    if (kind === "step" && last?.stopped === true && last.doing.name === step) {
      last.doing.seconds[last.doing.seconds.length - 1]! += seconds;
      last.stopped = false;
      return;
    }
    const doing = doingOf(stretch.doings, station, step, kind);
    doing.starts.push(start);
    doing.seconds.push(seconds);
    if (kind === "step") stretch.last.set(station, { doing, stopped: false });
    else if (last && kind === "stop") last.stopped = true;
  }

  /** Rows without a time. */
  get untimed(): number {
    return this.#untimed;
  }

  /** In the order of the log; those in which nothing lasts are left out. */
  stretches(): readonly Stretch[] {
    return this.#stretches.filter(({ from, until }) => until > from);
  }

  #stretch(run: string, start: number): OpenStretch {
    const known = this.#current.get(run);
    if (known && start <= known.until + BREAK) return known;
    const made: OpenStretch = { doings: new Map(), last: new Map(), from: Infinity, until: -Infinity };
    this.#stretches.push(made);
    this.#current.set(run, made);
    return made;
  }
}

function doingOf(doings: Map<string, Doing>, station: string, name: string, kind: Doing["kind"]): Doing {
  const key = doingKey(station, name);
  const known = doings.get(key);
  if (known) return known;
  const made: Doing = { station, name, kind, starts: [], seconds: [] };
  doings.set(key, made);
  return made;
}
