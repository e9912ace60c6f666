// One period of the ideal cycle as rows of states, since a drop keeps screw, valve and station busy at once.
import type { IdealCycle, IdealStep } from "#analysis/idealCycle.ts";
import { stateLook } from "./stateLook.ts";
import { nounOf } from "./tradeWords.ts";

export interface IdealSpan {
  readonly state: string;
  readonly letter: string;
  readonly start: number;
  readonly end: number;
  /** Its own resource's step lies on the critical circuit. */
  readonly critical: boolean;
}

export interface IdealRow {
  readonly resource: string;
  readonly spans: readonly IdealSpan[];
}

const screw = "plasticator";
const valve = "valve";

/** Seconds after which everything repeats; 0 for a bound. */
export function periodSeconds({ schedule, secondsPerShot }: IdealCycle): number {
  return schedule.reduce((most, { shot }) => Math.max(most, shot), 0) * secondsPerShot;
}

/** Screw and valve first, then the stations in the order in which they are served. */
export function idealRows({ schedule }: IdealCycle): readonly IdealRow[] {
  const stations = [...new Set(schedule.map(({ station }) => station))].filter((name) => name !== "");
  const ownersOf = owners(schedule);
  const others = [...new Set(schedule.map(({ resource }) => resource))].filter((name) => !stations.includes(name));
  // Screw and valve stand first; masks and the like come last.
  const first = [screw, valve].filter(
    (name) => others.includes(name) || schedule.some((step) => ownersOf(step).includes(name)),
  );
  return [...first, ...stations, ...others.filter((name) => !first.includes(name))].map((resource) => ({
    resource,
    spans: schedule.filter((step) => ownersOf(step).includes(resource)).map((step) => spanOf(step, resource)),
  }));
}

/** Whom a step of the schedule keeps busy: with an accumulator a drop is no business of the screw's. */
type OwnersOf = (step: IdealStep) => readonly string[];

function owners(schedule: readonly IdealStep[]): OwnersOf {
  const does = (name: string): boolean => schedule.some(({ step }) => step === name);
  const bound = does("shift to head") || does("fill beyond the shot") ? [] : [screw];
  const open = does("shift to head") ? [] : [...bound, valve];
  return ({ resource, step, station }) => {
    if (step === "drop") return [...open, station];
    if (step === "shift to port") return [...bound, valve, station];
    if (step === "shift to head") return [screw, valve];
    return step === "shift to neutral" ? [...bound, valve] : [resource];
  };
}

function spanOf({ resource, step, start, end, critical }: IdealStep, owner: string): IdealSpan {
  const state = step.startsWith("shift to") ? "valve shifting" : nounOf(step);
  return { state, letter: stateLook(state, "working").letter, start, end, critical: critical && resource === owner };
}
