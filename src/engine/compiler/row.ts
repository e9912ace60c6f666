// One step of one process as numbers: what the code of the core is made of, and what records read instead of names.
import { NO_REGISTER } from "#core/border/numbers.ts";
import type { Sampler } from "#engine/distributions/sampler.ts";

export interface Need {
  readonly place: number;
  readonly by: number;
  readonly count: number;
  readonly meanwhile: number;
  readonly othersTurn: number;
  readonly quiet: boolean;
  readonly takes: number;
  /** Global numbers of states: while the resource is in the one, the process's own resource shows the other. */
  readonly causes: readonly { readonly resource: number; readonly state: number; readonly shows: number }[];
}

export interface Give {
  readonly place: number;
  readonly by: number;
  readonly count: number;
  readonly carries: number;
}

export interface Show {
  readonly resource: number;
  readonly by: number;
  /** Global numbers of the states; cargo chooses among more than one. */
  readonly states: readonly number[];
}

/** How a step takes its time: a distribution for each cargo or one for all, the stream to draw from, the resource whose work it waits for. */
export interface Draw {
  /** Equal distributions have the same sampler. */
  readonly samplers: readonly Sampler[];
  readonly stream: number;
  /** The stream's last number once more. */
  readonly again: boolean;
  readonly clock: number;
  /** Tick to which the step lasts; BY_DISTRIBUTION where its distributions say how long, BY_TIMETABLE where the timetable does. */
  readonly until: number;
}

/** A number that is drawn, kept or judged, in whole millionths; a limit that is not there is infinite. */
export interface Scale {
  readonly sampler: Sampler;
  readonly stream: number;
  readonly keeps: boolean;
  readonly alone: boolean;
  readonly low: number;
  readonly high: number;
  readonly belowNext: number;
  readonly aboveNext: number;
}

/** Absent links are -1. */
export interface Row {
  readonly name: string;
  readonly process: number;
  readonly needs: readonly Need[];
  readonly standsInLine: boolean;
  /** Under the rule of priorities the lowest is served first. */
  readonly priority: number;
  readonly patience: Draw | null;
  readonly patienceActivity: number;
  readonly patienceNext: number;
  readonly shows: readonly Show[];
  readonly draw: Draw | null;
  readonly activity: number;
  /** Its end binds nothing. */
  readonly isClock: boolean;
  readonly scale: Scale | null;
  readonly gives: readonly Give[];
  readonly counts: readonly { readonly counter: number; readonly amount: number }[];
  /** Resources whose stop concerns this step under way: the process's own and those that it shows. */
  readonly occupies: readonly number[];
  /** Those of them whose stop keeps this step from starting; for physics none. */
  readonly gates: readonly number[];
  readonly isPhysics: boolean;
  /** By rule (finish, hold, scrap): RUNS_ON, HOLDS or the row to leave for. */
  readonly stopEffect: readonly number[];
  readonly stops: number;
  readonly stopsRule: number;
  readonly releases: number;
  readonly next: number;
  /** The timetable says what comes next. */
  readonly turns: boolean;
  readonly chance: number;
  readonly chanceNext: number;
  readonly chanceStream: number;
}

/** Nothing has to be chosen. */
export function isPlainShow({ by, states }: Show): boolean {
  return by === NO_REGISTER && states.length === 1;
}
