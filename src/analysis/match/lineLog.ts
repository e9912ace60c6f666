// What a line did, from the records of a floor log or of a run of the model.
import alea from "seedrandom/lib/alea.js";
import { mostGroups, type StepRecord } from "#analysis/log/logRecord.ts";
import { Doing } from "./doing.ts";

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

/** One name of one station in all stretches. */
interface Group {
  readonly doings: Doing[];
  readonly draw: () => number;
  each: number;
  cells: number;
}

export const doingKey = (station: string, name: string): string => JSON.stringify([station, name]);

/** After so many seconds without any row a new stretch begins. Common practice, no published source. */
const BREAK = 3600;
/** The rows of later ones are left out. */
export const mostStretches = 2000;

/** Keeps three numbers for each of so many cells of a station and step, and of one more in each stretch. */
export class LineLog {
  readonly #kept: number;
  readonly #stretches: OpenStretch[] = [];
  readonly #current = new Map<string, OpenStretch>();
  readonly #groups = new Map<string, Group>();
  #untimed = 0;
  #late = 0;
  /** A log with more groups than are collected holds something else in its columns. */
  isTooWide = false;

  constructor(kept = Infinity) {
    this.#kept = kept;
  }

  take(record: StepRecord): void {
    const { run, station, step, kind, seconds, start } = record;
    if (start === undefined) {
      this.#untimed += 1;
      return;
    }
    const stretch = this.#stretch(run, start);
    if (stretch === undefined) return;
    stretch.from = Math.min(stretch.from, start);
    stretch.until = Math.max(stretch.until, start + seconds);
    const last = stretch.last.get(station);
    // A step that goes on after a stop is one step.
    if (kind === "step" && last?.stopped === true && last.doing.name === step) {
      last.doing.extend(seconds);
      last.stopped = false;
      return;
    }
    const key = doingKey(station, step);
    const group = this.#groupOf(key);
    if (group === undefined) return;
    const doing = doingOf(stretch, key, record, group);
    const before = doing.cells;
    doing.add(start, seconds);
    group.cells += doing.cells - before;
    if (group.cells > this.#kept + group.doings.length) coarsen(group);
    if (kind === "step") stretch.last.set(station, { doing, stopped: false });
    else if (last && kind === "stop") last.stopped = true;
  }

  /** Rows without a time. */
  get untimed(): number {
    return this.#untimed;
  }

  /** Rows of stretches that are left out, since there are too many. */
  get late(): number {
    return this.#late;
  }

  /** Cells that are kept. */
  get cells(): number {
    return [...this.#groups.values()].reduce((sum, { cells }) => sum + cells, 0);
  }

  /** In the order of the log; those in which nothing lasts are left out. */
  stretches(): readonly Stretch[] {
    return this.#stretches.filter(({ from, until }) => until > from);
  }

  #stretch(run: string, start: number): OpenStretch | undefined {
    const known = this.#current.get(run);
    if (known && start <= known.until + BREAK) return known;
    if (this.#stretches.length >= mostStretches) {
      this.#late += 1;
      return undefined;
    }
    const made: OpenStretch = { doings: new Map(), last: new Map(), from: Infinity, until: -Infinity };
    this.#stretches.push(made);
    this.#current.set(run, made);
    return made;
  }

  #groupOf(key: string): Group | undefined {
    const known = this.#groups.get(key);
    if (known) return known;
    this.isTooWide ||= this.#groups.size >= mostGroups;
    if (this.isTooWide) return undefined;
    const made: Group = { doings: [], draw: alea(key), each: 1, cells: 0 };
    this.#groups.set(key, made);
    return made;
  }
}

function doingOf({ doings }: OpenStretch, key: string, record: StepRecord, group: Group): Doing {
  const known = doings.get(key);
  if (known) return known;
  const made = new Doing(record, group.draw);
  made.each = group.each;
  doings.set(key, made);
  group.doings.push(made);
  return made;
}

function coarsen(group: Group): void {
  group.each *= 2;
  for (const doing of group.doings) doing.halve();
  group.cells = group.doings.reduce((sum, { cells }) => sum + cells, 0);
}
