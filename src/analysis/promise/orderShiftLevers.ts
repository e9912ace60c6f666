// More work shifts: longer ones, Saturday, and one more a day, as far as the week has room for them before the due date.
import { calendarOver } from "#scenario/resolving/resolveCalendar.ts";
import { secondsOfDay } from "#scenario/resolving/wallTime.ts";
import type { CalendarSpec, Scenario, ShiftSpec } from "#scenario/scenario.ts";
import { weekdays } from "#foundation/civilDate.ts";
import type { NamedSettings } from "./orderLeverEffort.ts";

const day = 86_400;
const hour = 3600;
/** Longer work days tire; common practice, no published source. */
const overtime = 2 * hour;
const wholeShift = 8 * hour;

/** Only those that give more time on shift before the due date. */
export function shiftLevers({ calendar, operators }: Scenario, due: number | null): readonly NamedSettings[] {
  if (calendar === undefined || calendar.shifts.length === 0) return [];
  const { shifts } = calendar;
  const planned: readonly (readonly [NamedSettings, readonly ShiftSpec[]])[] = [
    ...withOvertime(shifts),
    ...withSaturday(shifts),
    ...withOneMore(shifts),
  ];
  const until = due ?? 4 * 7 * day;
  const before = timeOn(calendar, operators, until);
  return planned.flatMap(([lever, changed]) =>
    timeOn({ ...calendar, shifts: changed }, operators, until) > before ? [lever] : [],
  );
}

/** Seconds on shift up to then. */
function timeOn(calendar: CalendarSpec, operators: number, until: number): number {
  return calendarOver(calendar, operators, until).off.reduce((left, off) => left - (off.until - off.from), until);
}

type Planned = readonly (readonly [NamedSettings, readonly ShiftSpec[]])[];

/** The last work shift of the day ends later. */
function withOvertime(shifts: readonly ShiftSpec[]): Planned {
  const last = lastOf(shifts);
  const more = Math.min(overtime, freeAfter(shifts, last));
  const end = clock(secondsOfDay(last.end) + more);
  const settings = [`calendar.shifts[${shifts.indexOf(last)}].end=${end}`];
  const hours = Number((more / hour).toFixed(2));
  const changed = shifts.map((shift) => (shift === last ? { ...shift, end } : shift));
  return [[{ name: `${hours} h overtime a day`, effort: "overtime", settings }, changed]];
}

/** The work shifts of Friday on Saturday as well. */
function withSaturday(shifts: readonly ShiftSpec[]): Planned {
  const isNew = ({ days }: ShiftSpec): boolean => days !== undefined && days.includes("fri") && !days.includes("sat");
  const withDay = (shift: ShiftSpec): ShiftSpec =>
    isNew(shift) ? { ...shift, days: weekdays.filter((each) => each === "sat" || shift.days!.includes(each)) } : shift;
  const changed = shifts.map(withDay);
  const settings = changed.flatMap(({ days }, i) =>
    changed[i] === shifts[i] ? [] : [`calendar.shifts[${i}].days=[${days!.join(", ")}]`],
  );
  return [[{ name: "work on Saturday", effort: "saturday", settings }, changed]];
}

/** One more work shift after the last of the day. */
function withOneMore(shifts: readonly ShiftSpec[]): Planned {
  const last = lastOf(shifts);
  const length = Math.min(wholeShift, freeAfter(shifts, last));
  if (length <= overtime) return [];
  const { name: _, breaks: __, ...rest } = last;
  const end = clock(secondsOfDay(last.end) + length);
  const changed = [...shifts, { ...rest, name: "more", start: last.end, end, breaks: [] }];
  const settings = [`calendar.shifts=[${changed.map(shiftText).join(", ")}]`];
  const hours = Number((length / hour).toFixed(2));
  return [[{ name: `${hours} h work shift more a day`, effort: "shift", settings }, changed]];
}

/** The work shift after which the week has the longest time without one. */
function lastOf(shifts: readonly ShiftSpec[]): ShiftSpec {
  return shifts.toSorted((one, other) => freeAfter(shifts, other) - freeAfter(shifts, one))[0]!;
}

/** Seconds from the end of a work shift to the next start of any, whatever its days. */
function freeAfter(shifts: readonly ShiftSpec[], { end }: ShiftSpec): number {
  const at = secondsOfDay(end);
  const gaps = shifts.map(({ start }) => (secondsOfDay(start) - at + day) % day);
  const isCovered = shifts.some((shift) => isWithin(at, shift));
  return isCovered ? 0 : Math.min(...gaps);
}

/** Whether a work shift is under way at this second of the day, its end excluded. */
function isWithin(at: number, { start, end }: ShiftSpec): boolean {
  const length = (secondsOfDay(end) - secondsOfDay(start) + day) % day || day;
  return (at - secondsOfDay(start) + day) % day < length;
}

/** As a scenario writes it. */
function shiftText({ name, days, start, end, operators, breaks }: ShiftSpec): string {
  const rests = breaks.map(({ at, time }) => `{ at: ${at}, time: ${time} s }`);
  const parts = [
    ...(name === undefined ? [] : [`name: '${name.replaceAll("'", "''")}'`]),
    ...(days === undefined ? [] : [`days: [${days.join(", ")}]`]),
    `start: ${start}`,
    `end: ${end}`,
    ...(operators === undefined ? [] : [`operators: ${operators}`]),
    ...(rests.length === 0 ? [] : [`breaks: [${rests.join(", ")}]`]),
  ];
  return `{ ${parts.join(", ")} }`;
}

function clock(seconds: number): string {
  const minutes = Math.round(seconds / 60) % 1440;
  return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, "0")).join(":");
}
