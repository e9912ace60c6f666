// One period of the ideal cycle as rows of states, since a drop keeps screw, valve and station busy at once.
import type { IdealCycle, IdealStep } from "#analysis/ideal/idealCycle.ts";
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { PLASTICATOR, RAM, ramOf, VALVE } from "#cell/words/cycleNames.ts";
import { stateOfStep, stepLook } from "#report/words/stateLook.ts";

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

/** Seconds after which everything repeats; 0 for a bound. */
export function periodSeconds({ schedule, secondsPerShot }: IdealCycle): number {
  return schedule.reduce((most, { shot }) => Math.max(most, shot), 0) * secondsPerShot;
}

/** Screw and valve first, then what else delivers melt, then the stations by their numbers. */
export function idealRows({ schedule }: IdealCycle): readonly IdealRow[] {
  const served = [...new Set(schedule.map(({ station }) => station))].filter((name) => name !== "");
  const stations = inReadingOrder(served, (name) => name);
  const busy = [...new Set(schedule.flatMap(({ occupies }) => occupies))];
  const others = busy.filter((name) => ![PLASTICATOR, VALVE, ...stations].includes(name));
  // Rams stand with the screw, masks and the like come last.
  const rams = [RAM, ...stations.map(ramOf)];
  const first = [
    ...[PLASTICATOR, VALVE].filter((name) => busy.includes(name)),
    ...others.filter((name) => rams.includes(name)),
  ];
  return [...first, ...stations, ...others.filter((name) => !first.includes(name))].map((resource) => ({
    resource,
    spans: schedule.filter(({ occupies }) => occupies.includes(resource)).map((step) => spanOf(step, resource)),
  }));
}

function spanOf({ resource, step, role, start, end, critical }: IdealStep, owner: string): IdealSpan {
  const state = stateOfStep(role) ?? step;
  return { state, letter: stepLook(role).letter, start, end, critical: critical && resource === owner };
}
