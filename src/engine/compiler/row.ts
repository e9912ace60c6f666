// One step of one process as numbers: what the loop of the simulation reads instead of names.
import type { Sampler } from "#engine/distributions/sampler.ts";

export interface Need {
  readonly place: number;
  readonly by: number;
  readonly count: number;
  readonly meanwhile: number;
  readonly othersTurn: number;
  readonly quiet: boolean;
  readonly takes: number;
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
  /** Global numbers of the states; more than one are chosen by cargo. */
  readonly states: Int32Array;
}

/** How a step takes its time: a law for each cargo or one for all, the stream to draw from, the resource whose work it waits for. */
export interface Draw {
  readonly samplers: readonly Sampler[];
  /** Number of the first of them among all laws of the program. */
  readonly firstLaw: number;
  readonly stream: number;
  /** Number of the kind of draws, made ahead, to which it belongs; -1 where it draws when it starts. */
  readonly kind: number;
  /** The stream's last number once more. */
  readonly again: boolean;
  readonly clock: number;
  /** Tick to which the step lasts; -1 where its laws say how long. */
  readonly until: number;
}

/** A number that is drawn, kept or judged, in whole millionths; a limit that is not there is infinite. */
export interface Scale {
  /** Number of its law among all laws of the program. */
  readonly law: number;
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
  /** No other process ever wants what this step needs: it may take it the moment it is there. */
  readonly takesAlone: boolean;
  /** The same, and no state tells of the wait: joining the line is no news to anybody. */
  readonly waitsUnseen: boolean;
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
  readonly counters: Int32Array;
  readonly amounts: Float64Array;
  /** Resources whose stop concerns this step under way: the process's own and those that it shows. */
  readonly occupies: Int32Array;
  /** Those of them whose stop keeps this step from starting; for physics none. */
  readonly gates: Int32Array;
  readonly isPhysics: boolean;
  /** By rule (finish, hold, scrap): RUNS_ON, HOLDS or the row to leave for. */
  readonly stopEffect: Int32Array;
  readonly stops: number;
  readonly stopsRule: number;
  readonly releases: number;
  readonly next: number;
  readonly chance: number;
  readonly chanceNext: number;
  readonly chanceStream: number;
}
