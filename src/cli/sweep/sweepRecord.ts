// What the journal of a sweep holds: first the plan of the whole sweep, then one record a finished point.
import type { PointOutcome } from "#analysis/study/sweepPoint.ts";
import type { Scenario } from "#scenario/scenario.ts";

export const journalName = "sweep.jsonl";

export interface SweepPlan {
  readonly kind: "plan";
  readonly version: string;
  /** Of the results and of their folder. */
  readonly name: string;
  readonly paths: readonly string[];
  readonly points: number;
  /** Such as `1/3`; all else is the same for all shares. */
  readonly shard?: string;
  /** The first point that can run, with the settings that all points share. */
  readonly scenario: Scenario;
}

export interface PointRecord {
  readonly kind: "point";
  readonly index: number;
  readonly values: readonly string[];
  /** Checksum of all that the outcome follows from. */
  readonly key: string;
  readonly outcome: PointOutcome;
}

export type SweepRecord = SweepPlan | PointRecord;

export function parseRecord(text: string): SweepRecord {
  return JSON.parse(text) as SweepRecord;
}
