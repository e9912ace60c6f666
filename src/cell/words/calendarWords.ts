// The few words in which calendars are written: steps that last to an instant, and the end of all shifts.
import type { TimeSpec } from "#engine/compiler/stepTable.ts";
import type { AbsenceSpec } from "#scenario/scenario.ts";
import type { CellStep } from "./cellTable.ts";
import { stateNames } from "./stateNames.ts";
import { named } from "./stepNames.ts";

export const NEVER = "never again";

export const isOffShift = ({ why }: AbsenceSpec): boolean => why === stateNames.offShift;

export const lasting = (until: number): TimeSpec => ({
  distributions: [{ distribution: { kind: "fixed", value: 0 } }],
  until,
});

export const clockUntil = (until: number): CellStep => ({
  ...named("calendar.await"),
  time: lasting(Math.max(0, until)),
  isClock: true,
  stoppedBy: [],
});

export const forEver: CellStep = { ...named("calendar.end"), needs: [{ place: NEVER }], stoppedBy: [] };

/** When they begin to be off shift: two of the crew, or one of them and the cell, rest together where that is the same second. */
export const restsOf = (absences: readonly AbsenceSpec[]): ReadonlySet<number> =>
  new Set(absences.filter(isOffShift).map(({ from }) => from));
