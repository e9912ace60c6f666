// What a report shows of single shots: a short stretch of the first replication.
import { cycleTimeline } from "#cell/cycleTimeline.ts";
import type { TimelineRecord } from "#cell/timelineRecord.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { planOf } from "./planOf.ts";

export interface FirstShots {
  /** Undefined where the cell makes too few shots. */
  readonly timeline: TimelineRecord | undefined;
}

/** With the luck of the study's first replication. */
export function firstShots(scenario: Scenario): FirstShots {
  return { timeline: cycleTimeline(planOf(scenario)) };
}
