// Sums of the quarters of an hour of one replication for each local day.
import { dayUses, type QuarterRecord } from "#cell/records/quarterRecord.ts";

export interface DayTotal {
  /** Days from 1970-01-01 to the local date. */
  readonly day: number;
  /** Seconds of the run at which the observed part of the day begins and ends. */
  readonly from: number;
  readonly until: number;
  /** By use, in the order of `dayUses`, mean over the stations. */
  readonly seconds: readonly number[];
  readonly good: number;
}

/** In chronological order. */
export function dayTotals(quarters: readonly QuarterRecord[]): readonly DayTotal[] {
  const days: DayTotal[] = [];
  for (const { day, from, until, seconds, good } of quarters) {
    const last = days.at(-1);
    if (last?.day !== day) days.push({ day, from, until, seconds, good });
    else {
      const sums = dayUses.map((_, i) => last.seconds[i]! + seconds[i]!);
      days[days.length - 1] = { ...last, until, seconds: sums, good: last.good + good };
    }
  }
  return days;
}
