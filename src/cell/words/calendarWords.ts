// The few words in which calendars are written: clocks that run to an instant, and the places at which a shift's end is told.
import type { StepSpec, TimeSpec } from "#engine/compiler/stepTable.ts";
import type { AbsenceSpec } from "#scenario/scenario.ts";

export const OFF = "off shift";
export const NEVER = "never again";
/** What a station needs to begin a cycle, and the screw to begin anything. */
export const mayStart = (station: string): string => `${station} may start`;
export const SCREW = "screw may work";
export const gone = (station: string): string => `last parts out of ${station}`;

export const lasting = (until: number): TimeSpec => ({ laws: [{ law: { kind: "fixed", value: 0 } }], until });

export const clockUntil = (until: number): StepSpec => ({
  name: "on shift",
  time: lasting(Math.max(0, until)),
  isClock: true,
  stoppedBy: [],
});

export const forEver: StepSpec = { name: "to the end", needs: [{ place: NEVER }], stoppedBy: [] };

export const isSame = (one: AbsenceSpec, other: AbsenceSpec): boolean =>
  one.from === other.from && one.why === other.why && one.why === OFF;
