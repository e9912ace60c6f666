// What the rows of a log become: steps and stops with their times, and what was wrong with a row.

/** More stations times steps mean that a column of other content was taken for the steps. */
export const mostGroups = 500;

export interface StepRecord {
  readonly station: string;
  readonly step: string;
  readonly seconds: number;
  /** A wait depends on other stations, so that it is a result and no input. */
  readonly kind: "step" | "stop" | "wait";
  /** Seconds since an arbitrary instant; absent in a log without times. */
  readonly start?: number;
  /** Hour of the day, from 0 to 23; absent where the log's times have none. */
  readonly hour?: number | undefined;
  /** In the file, from 1. */
  readonly line: number;
  /** Increases where the clock begins anew. */
  readonly run: string;
}

type LogProblem = keyof typeof logProblems;

/** What can be wrong with a row, and what becomes of it. */
export const logProblems = {
  "empty time": "left out",
  "empty duration": "left out",
  "empty step": "left out",
  "unreadable time": "left out",
  "unreadable duration": "left out",
  "duration not above 0": "left out",
  "ends before it starts": "left out",
  "duplicate row": "left out",
  "time goes back": "left out",
  "end without a start": "left out",
  "start without an end": "left out",
  "gap in the log": "left out",
  "state without an end": "left out",
  "earlier than the row before": "kept",
  "overlap with the row before": "kept",
  "local hour that comes twice": "kept, as the first or the second by the order of rows",
  "local time that does not exist": "kept, as if the clock had not changed",
} as const;

export interface ProblemCount {
  readonly problem: LogProblem;
  readonly count: number;
  /** Line of the first. */
  readonly line: number;
  /** What the row has there. */
  readonly value: string;
}

export interface Problems {
  readonly add: (problem: LogProblem, line: number, value?: string) => undefined;
  readonly counts: () => readonly ProblemCount[];
}

export function problemCounter(): Problems {
  const found = new Map<LogProblem, { count: number; readonly line: number; readonly value: string }>();
  return {
    add: (problem, line, value = "") => {
      const known = found.get(problem);
      if (known) known.count += 1;
      else found.set(problem, { count: 1, line, value });
      return undefined;
    },
    counts: () => [...found].map(([problem, each]) => ({ problem, ...each })),
  };
}

export function leftOut(counts: readonly ProblemCount[]): number {
  return counts.filter(({ problem }) => logProblems[problem] === "left out").reduce((sum, { count }) => sum + count, 0);
}

const stopWords =
  /\b(?:stop(?:ped|page)?|downtime|fault|fail\w*|breakdown|alarm|repair\w*|st(?:ö|oe)r\w*|defekt|ausfall)\b/iu;
const waitWords = /\b(?:wait\w*|await\w*|idle|starved|blocked|wart\w*|leerlauf)\b/iu;
/** A valve that is in neutral rests; `shift to neutral` and `hold pressure` are steps. */
const isResting = /^(?:(?:in |at )?neutral|free|hold(?:ing)?(?: an? .*)?)$/iu;

/** A machine that is down is stopped; a pin or a platen that goes down is a step. */
const isDown = /^(?:.*\b(?:machine|line|cell|station|press|mold|screw)\s+(?:is\s+)?)?down$/iu;

/** What the call says of names, in small letters. */
export interface KnownNames {
  readonly stops?: readonly string[];
  readonly steps?: readonly string[];
}

/** By the call, else by the words of a step or state, in English or German. */
export function kindOf(words: string, { stops = [], steps = [] }: KnownNames = {}): StepRecord["kind"] {
  const name = words.toLowerCase();
  if (steps.includes(name)) return "step";
  if (stops.includes(name) || stopWords.test(words) || isDown.test(words)) return "stop";
  return waitWords.test(words) || isResting.test(words) ? "wait" : "step";
}
