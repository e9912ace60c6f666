// What a calendar says, a row each: shifts, breaks, changes of the clocks, what a start costs, and what is changed when.
import { weekdayOf, weekdays, daysOf, type Weekday } from "#foundation/civilDate.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { PlannedChange } from "#analysis/study/calendarStudy.ts";
import type { Study } from "#analysis/study/study.ts";
import type { CalendarSpec, ClockChangeSpec, Scenario, ShiftSpec } from "#scenario/scenario.ts";
import { secondsOfDay, spokenWallTime } from "#scenario/resolving/wallTime.ts";
import { text } from "./columns.ts";
import { fillTable, type Cell, type Table } from "./table.ts";

const time = (seconds: number): string => formatQuantity(seconds, "time", { digits: 3 });
const mass = (kilograms: number): string => formatQuantity(kilograms, "mass", { digits: 3 });

export function planTable({ scenario, calendar: found }: Pick<Study, "scenario" | "calendar">): Table {
  const { calendar } = scenario;
  const columns = [
    text("what", "What is planned"),
    text("day", "On which days"),
    text("from", "Local wall time at which it begins"),
    text("until", "Local wall time at which it ends"),
    text("meaning", "Effect on the cell"),
  ];
  const rows = [
    ...(calendar ? calendar.shifts.flatMap((shift, i) => shiftRows(shift, i, calendar, scenario)) : []),
    ...(calendar?.clockChanges ?? []).map(clockRow),
    ...startUpRows(scenario),
    ...(found?.changes ?? []).map((change) => changeRow(change, calendar)),
  ];
  return fillTable({ name: "plan", meaning: "One thing that the calendar plans, in local wall time.", columns }, rows);
}

export function shiftName({ name }: ShiftSpec, index: number): string {
  return name ?? `shift ${index + 1}`;
}

type Row = readonly Cell[];

function shiftRows(shift: ShiftSpec, index: number, { breaks }: CalendarSpec, { operators }: Scenario): readonly Row[] {
  const people = Math.min(shift.operators ?? operators, operators);
  const staffed = operators === 0 ? "the cell works" : `the cell works, with ${peopleWords(people, operators)}`;
  const name = shiftName(shift, index);
  const goesOn = breaks === "stop" ? "the cell stops" : "the cell runs on without operators";
  return [
    [name, spokenDays(shift.days), shift.start, shift.end, staffed],
    ...shift.breaks.map(({ at, time: length }) => {
      return [`break of ${name}`, "", at, timeOfDay(secondsOfDay(at) + length), `${time(length)}; ${goesOn}`];
    }),
  ];
}

function peopleWords(people: number, all: number): string {
  return people < all ? `${people} of ${all} operators` : all === 1 ? "its operator" : `all ${all} operators`;
}

/** "mon to fri"; days that do not follow each other one by one. */
export function spokenDays(days: readonly Weekday[] = weekdays): string {
  const sorted = weekdays.filter((day) => days.includes(day));
  if (sorted.length === weekdays.length) return "every day";
  const first = weekdays.indexOf(sorted[0] ?? "mon");
  const follow = sorted.every((day, i) => weekdays.indexOf(day) === first + i);
  return follow && sorted.length > 2 ? `${sorted[0]} to ${sorted.at(-1)}` : sorted.join(", ");
}

function timeOfDay(seconds: number): string {
  const minutes = Math.round(seconds / 60) % 1440;
  return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, "0")).join(":");
}

function clockRow({ on, at, by }: ClockChangeSpec): Row {
  const put = by > 0 ? "clocks go forward" : "clocks go back";
  const day = `${weekdayOf(daysOf(on) ?? 0)} ${on}`;
  return [put, day, at, timeOfDay(secondsOfDay(at) + by + 86_400), `the day has ${24 - by / 3600} h`];
}

function startUpRows({ startUp }: Scenario): readonly Row[] {
  if (!startUp) return [];
  const { afterOff, heatUp, purge, scrap } = startUp;
  const parts = [
    ...(heatUp > 0 ? [`${time(heatUp)} of heating up`] : []),
    ...(purge > 0 ? [`${mass(purge)} of melt purged`] : []),
    ...(scrap > 0 ? [`rejects from ${scrap} ${scrap === 1 ? "cycle" : "cycles"} of each station`] : []),
  ];
  return [["start-up", `after a rest of ${time(afterOff)} or more`, "", "", parts.join(", then ")]];
}

function changeRow(change: PlannedChange, calendar: CalendarSpec | undefined): Row {
  const { name, kind, station, at, seconds, purged, residue } = change;
  const [weekday = "", date = "", clock = ""] = calendar ? spokenWallTime(at, calendar).split(" ") : [];
  const when = calendar ? [`${weekday} ${date}`, clock.slice(0, 5)] : [`${time(at)} after the start of the run`, ""];
  const after =
    residue === null ? "" : `, then ${mass(purged)} purged until under ${formatQuantity(residue, "share")} is old`;
  const where = station === undefined ? "" : ` at ${station}`;
  return [`change of ${kind}${where}: ${name}`, ...when, "", `${time(seconds)} of work on average${after}`];
}
