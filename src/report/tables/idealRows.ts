// One period of the ideal cycle as rows of states, since a drop keeps screw, valve and station busy at once.
import type { IdealCycle, IdealStep } from "#analysis/ideal/idealCycle.ts";
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { stateLook } from "#report/words/stateLook.ts";
import { nounOf } from "#report/words/tradeWords.ts";

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

/** Screw and valve first, then what else delivers melt, then the stations by their numbers. */
export function idealRows({ schedule }: IdealCycle): readonly IdealRow[] {
  const served = [...new Set(schedule.map(({ station }) => station))].filter((name) => name !== "");
  const stations = inReadingOrder(served, (name) => name);
  const busy = [...new Set(schedule.flatMap(({ occupies }) => occupies))];
  const others = busy.filter((name) => ![screw, valve, ...stations].includes(name));
  // Rams stand with the screw, masks and the like come last.
  const first = [
    ...[screw, valve].filter((name) => busy.includes(name)),
    ...others.filter((name) => /^ram\b/u.test(name)),
  ];
  return [...first, ...stations, ...others.filter((name) => !first.includes(name))].map((resource) => ({
    resource,
    spans: schedule.filter(({ occupies }) => occupies.includes(resource)).map((step) => spanOf(step, resource)),
  }));
}

function spanOf({ resource, step, start, end, critical }: IdealStep, owner: string): IdealSpan {
  const state = stateOfStep(step, resource);
  return { state, letter: stateLook(state, "working").letter, start, end, critical: critical && resource === owner };
}

/** The work of a server bears the server's own name. */
function stateOfStep(step: string, resource: string): string {
  if (step.startsWith("shift to")) return "valve shifting";
  if (step.startsWith("walk to")) return "walking";
  return resource === step || resource.startsWith(`${step} of `) ? "working" : nounOf(step);
}
