// The few words in which calendars are written: steps that last to an instant, and the end of all shifts.
import type { TimeSpec } from "#engine/compiler/stepTable.ts";
import type { AbsenceSpec } from "#scenario/scenario.ts";
import type { CellProcess, CellStep } from "./cellTable.ts";
import { stateNames } from "./stateNames.ts";
import { named } from "./stepNames.ts";

export const NEVER = "never again";

export const isOffShift = ({ why }: AbsenceSpec): boolean => why === stateNames.offShift;

const lasting = (until: number | "timetable"): TimeSpec => ({
  distributions: [{ distribution: { kind: "fixed", value: 0 } }],
  until,
});

/** To the end of the absence. */
export const whileAway: TimeSpec = lasting("timetable");

export const clockUntil = (until: number | "timetable"): CellStep => ({
  ...named("calendar.await"),
  time: lasting(until === "timetable" ? until : Math.max(0, until)),
  isClock: true,
  stoppedBy: [],
});

export const forEver: CellStep = { ...named("calendar.end"), needs: [{ place: NEVER }], stoppedBy: [] };

/** An absence: the second at which its steps begin, and the one to which the step of them lasts that is timed by `whileAway`. */
export interface Turn {
  readonly from: number;
  readonly until: number;
  readonly steps: readonly CellStep[];
}

/** Steps that are the same in many absences stand in the table once. */
export function byTimetable(turns: readonly Turn[]): Pick<CellProcess, "steps" | "timetable"> {
  if (turns.length === 0) return { steps: [forEver] };
  const clock: CellStep = { ...clockUntil("timetable"), turns: true };
  const steps: CellStep[] = [clock];
  const known = new Map<string, number>();
  const entries = turns.flatMap(({ from, until, steps: own }) => {
    const key = JSON.stringify(own);
    const leadsTo = known.get(key) ?? steps.length;
    known.set(key, leadsTo);
    if (leadsTo === steps.length) steps.push(...own.slice(0, -1), { ...own.at(-1)!, next: clock.name });
    return [{ until: Math.max(0, from), leadsTo }, { until }];
  });
  return { steps: [...steps, forEver], timetable: [...entries, { until: 0, leadsTo: steps.length }] };
}

/** When they begin to be off shift: two of the crew, or one of them and the cell, rest together where that is the same second. */
export const restsOf = (absences: readonly AbsenceSpec[]): ReadonlySet<number> =>
  new Set(absences.filter(isOffShift).map(({ from }) => from));
