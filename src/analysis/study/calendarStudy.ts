// The plan of a calendar for each local day, and the times and good parts of that day over the replications.
import { mean } from "simple-statistics";
import { meeting, united, type Stretch } from "#engine/calendar.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import { dateOf, weekdayOf, type Weekday } from "#foundation/civilDate.ts";
import { purgeOfChange } from "#cell/layers/purge.ts";
import { dayUses, type DayRecord, type QuarterRecord } from "#cell/records/quarterRecord.ts";
import type { CalendarSpec, ChangeSpec, Scenario } from "#scenario/scenario.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export interface DaySummary {
  /** Days from 1970-01-01. */
  readonly day: number;
  readonly date: string;
  readonly weekday: Weekday;
  /** Observed seconds of the day, of those the seconds in planned work shifts, and the seconds in planned breaks. */
  readonly seconds: number;
  readonly shiftSeconds: number;
  readonly breakSeconds: number;
  /** Seconds by use, in the order of `dayUses`, mean over stations and replications. */
  readonly useSeconds: readonly number[];
  readonly good: Interval;
}

export interface PlannedChange extends Pick<ChangeSpec, "name" | "kind" | "station" | "at"> {
  /** Mean time of the operator's work, and melt purged after it, kg. */
  readonly seconds: number;
  readonly purged: number;
  readonly residue: number | null;
}

export interface CalendarStudy {
  /** Empty where only changes are planned. */
  readonly days: readonly DaySummary[];
  /** Of the first days of the first replication. */
  readonly quarters: readonly QuarterRecord[];
  readonly changes: readonly PlannedChange[];
}

/** Null without a calendar or changes. */
export function calendarStudy(scenario: Scenario, answers: readonly ReplicationAnswer[]): CalendarStudy | null {
  const { calendar, changes = [] } = scenario;
  if (!calendar && changes.length === 0) return null;
  const [first] = answers;
  const days = first?.days ?? [];
  const planned = plannedTimes(calendar);
  return {
    days: calendar ? days.map((day, i) => daySummary(planned, day, allOfDay(answers, i))) : [],
    quarters: first?.quarters ?? [],
    changes: changes.map((change) => plannedChange(change, scenario)),
  };
}

function plannedChange(change: ChangeSpec, scenario: Scenario): PlannedChange {
  const { name, kind, station, at, time, purge } = change;
  return {
    name,
    kind,
    at,
    ...(station === undefined ? {} : { station }),
    seconds: distributionMean(time),
    purged: purgeOfChange(change, scenario),
    residue: purge?.residue ?? null,
  };
}

/** All replications have the same days. */
function allOfDay(answers: readonly ReplicationAnswer[], index: number): readonly DayRecord[] {
  return answers.flatMap(({ days }) => (days?.[index] ? [days[index]] : []));
}

/** Of all work shifts together, which may overlap. */
interface PlannedTimes {
  readonly shifts: readonly Stretch[];
  readonly breaks: readonly Stretch[];
}

function plannedTimes(calendar: CalendarSpec | undefined): PlannedTimes {
  const shifts = calendar?.shifts ?? [];
  return {
    shifts: united(shifts.flatMap(({ stretches }) => stretches)),
    breaks: united(shifts.flatMap(({ pauses }) => pauses)),
  };
}

function daySummary(planned: PlannedTimes, total: DayRecord, all: readonly DayRecord[]): DaySummary {
  const { day, from, until } = total;
  return {
    day,
    date: dateOf(day),
    weekday: weekdayOf(day),
    seconds: until - from,
    shiftSeconds: overlap(planned.shifts, total),
    breakSeconds: overlap(planned.breaks, total),
    useSeconds: dayUses.map((_, use) => mean(all.map(({ seconds }) => seconds[use]!))),
    good: meanInterval(all.map(({ good }) => good)),
  };
}

/** Seconds of the stretch in any of the others. */
function overlap(others: readonly Stretch[], stretch: Stretch): number {
  return meeting(others, stretch).reduce(
    (sum, { from, until }) => sum + Math.min(stretch.until, until) - Math.max(stretch.from, from),
    0,
  );
}
