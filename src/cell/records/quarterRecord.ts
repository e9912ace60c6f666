// What the stations of a cell did in one quarter of an hour of a day, on the mean: the grain of a calendar's report.

/** `start-up`: waiting while the screw heats up or purges after a rest. */
export const dayUses = ["working", "waiting", "stopped", "start-up", "changeover", "off"] as const;
export type DayUse = (typeof dayUses)[number];

export interface QuarterRecord {
  /** Days from 1970-01-01 to the local date, and seconds after midnight that the wall shows as the quarter begins. */
  readonly day: number;
  readonly second: number;
  /** Seconds of the run. */
  readonly from: number;
  readonly until: number;
  /** By use, in the order of `dayUses`, mean over the stations; they add up to the quarter. */
  readonly seconds: readonly number[];
  /** Good parts that came out of it. */
  readonly good: number;
}

export interface DayRecord {
  /** Days from 1970-01-01 to the local date. */
  readonly day: number;
  /** Seconds of the run at which the observed part of the day begins and ends. */
  readonly from: number;
  readonly until: number;
  /** By use, in the order of `dayUses`, mean over the stations. */
  readonly seconds: readonly number[];
  readonly good: number;
}
