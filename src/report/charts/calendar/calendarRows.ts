// Arranges the quarter hours of a calendar in rows: one row a day, or a week where there are too many days.
import { mean } from "simple-statistics";
import { dateOf, weekdayOf, weekdays } from "#foundation/civilDate.ts";
import { dayUses, type QuarterRecord } from "#cell/records/quarterRecord.ts";
import type { CalendarStudy, DaySummary } from "#analysis/study/calendarStudy.ts";

const SECONDS_OF_DAY = 86_400;
/** More rows would make the picture too long. */
const mostDays = 14;
const mostWeeks = 53;
/** In a row of a week, one step of the picture is two hours. */
const quartersPerStep = 8;

/** A step of the picture: seconds on the wall's axis from the beginning of the row, and of the run. */
export interface CalendarStep {
  readonly from: number;
  readonly to: number;
  readonly runFrom: number;
  readonly runUntil: number;
  /** Shares by use, in the order of `dayUses`; they add up to 1. */
  readonly shares: readonly number[];
}

export interface CalendarRow {
  readonly label: string;
  /** A remark beneath the label, such as that the day has 23 hours. */
  readonly note: string;
  readonly steps: readonly CalendarStep[];
  readonly days: readonly DaySummary[];
}

export interface CalendarRows {
  readonly unit: "day" | "week";
  readonly rows: readonly CalendarRow[];
  /** Days and weeks beyond those that are shown. */
  readonly left: number;
}

export function calendarRows({ days, quarters }: Pick<CalendarStudy, "days" | "quarters">): CalendarRows {
  const ofDay = new Map<number, QuarterRecord[]>();
  for (const quarter of quarters) {
    const own = ofDay.get(quarter.day);
    if (own) own.push(quarter);
    else ofDay.set(quarter.day, [quarter]);
  }
  const placed = days.map((day) => ({ day, steps: placedOnWall(ofDay.get(day.day) ?? []) }));
  if (days.length <= mostDays) {
    const rows = placed.map(({ day, steps }) => ({
      label: `${day.weekday} ${day.date}`,
      note: noteOf(day, steps),
      steps,
      days: [day],
    }));
    return { unit: "day", rows, left: 0 };
  }
  const mondays = [...new Set(days.map(({ day }) => mondayOf(day)))];
  const rows = mondays.slice(0, mostWeeks).map((monday) => {
    const own = placed.filter(({ day }) => mondayOf(day.day) === monday);
    const steps = own.flatMap(({ day, steps: quarterly }) =>
      later(coarser(quarterly), (day.day - monday) * SECONDS_OF_DAY),
    );
    return { label: `from ${dateOf(monday)}`, note: "", steps, days: own.map(({ day }) => day) };
  });
  return { unit: "week", rows, left: mondays.length - rows.length };
}

const mondayOf = (day: number): number => day - weekdays.indexOf(weekdayOf(day));

/** A whole day differs from 24 hours only where the clocks change. */
function noteOf({ seconds }: DaySummary, steps: readonly CalendarStep[]): string {
  const hours = Number((seconds / 3600).toFixed(2));
  const isWhole = steps[0]?.from === 0 && steps.at(-1)?.to === SECONDS_OF_DAY;
  if (!isWhole) return `${hours} h observed`;
  return hours === 24 ? "" : `${hours} h: clocks ${hours < 24 ? "forward" : "back"}`;
}

/** In wall time, so that 06:00 is in the same place on every day; a doubled hour shares its place, a skipped hour stays empty. */
function placedOnWall(quarters: readonly QuarterRecord[]): readonly CalendarStep[] {
  const again = quarters.findIndex(({ second }, i) => second < (quarters[i - 1]?.second ?? 0));
  const twice = again === -1 ? null : { from: quarters[again]!.second, to: quarters[again - 1]!.second + 900 };
  return quarters.map(({ second, from: runFrom, until: runUntil, seconds }, i) => {
    const length = runUntil - runFrom;
    const isTwice = twice !== null && second >= twice.from && second < twice.to;
    const halfway = twice !== null && i >= again ? (twice.to - twice.from) / 2 : 0;
    const from = isTwice ? twice.from + halfway + (second - twice.from) / 2 : second;
    return {
      from,
      to: from + (isTwice ? length / 2 : length),
      runFrom,
      runUntil,
      shares: seconds.map((each) => each / length),
    };
  });
}

function coarser(steps: readonly CalendarStep[]): readonly CalendarStep[] {
  const count = Math.ceil(steps.length / quartersPerStep);
  return Array.from({ length: count }, (_, i) => steps.slice(i * quartersPerStep, (i + 1) * quartersPerStep)).map(
    (own) => {
      const [first, last] = [own[0]!, own.at(-1)!];
      const shares = dayUses.map((_, use) => mean(own.map(({ shares: each }) => each[use]!)));
      return { from: first.from, to: last.to, runFrom: first.runFrom, runUntil: last.runUntil, shares };
    },
  );
}

function later(steps: readonly CalendarStep[], by: number): readonly CalendarStep[] {
  return steps.map((step) => ({ ...step, from: step.from + by, to: step.to + by }));
}

export interface WallPiece {
  readonly from: number;
  readonly to: number;
}

/** The place of a period of the run in a row, in several pieces around a skipped hour. */
export function piecesOf(
  stretch: { readonly from: number; readonly until: number },
  { steps }: CalendarRow,
): readonly WallPiece[] {
  const pieces: { from: number; to: number }[] = [];
  for (const { from, to, runFrom, runUntil } of steps) {
    const [first, last] = [Math.max(stretch.from, runFrom), Math.min(stretch.until, runUntil)];
    if (last <= first) continue;
    const at = (second: number): number => from + ((second - runFrom) / (runUntil - runFrom)) * (to - from);
    const before = pieces.at(-1);
    if (before && Math.abs(before.to - at(first)) < 1) before.to = at(last);
    else pieces.push({ from: at(first), to: at(last) });
  }
  return pieces;
}
