// The pictures of single shots that a report shows: a short stretch of the first replication, and all its cycle times.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import { cycleTimeline } from "#cell/cycleTimeline.ts";
import { planCell } from "#cell/planCell.ts";
import { runCell } from "#cell/runCell.ts";
import type { TimelineRecord } from "#cell/timelineRecord.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { quantiles, type Quantiles } from "./quantiles.ts";

/** Seconds from each delivery of one station to its next. */
export interface StationCycles {
  readonly station: string;
  readonly seconds: readonly number[];
  /** Null where there is no cycle. */
  readonly spread: Quantiles | null;
}

export interface FirstShots {
  /** Undefined where the cell makes too few shots. */
  readonly timeline: TimelineRecord | undefined;
  readonly cycles: readonly StationCycles[];
}

/** With the luck of the study's first replication. */
export function firstShots(scenario: Scenario): FirstShots {
  const plan = planCell(scenario);
  const { stations } = runCell(plan, { replication: 1 });
  return {
    timeline: cycleTimeline(plan),
    cycles: stations.map(({ name, shotTicks }) => cyclesOf(name, shotTicks)),
  };
}

function cyclesOf(station: string, shotTicks: readonly number[]): StationCycles {
  const seconds = shotTicks.slice(1).map((tick, i) => (tick - shotTicks[i]!) / TICKS_PER_SECOND);
  return { station, seconds, spread: seconds.length === 0 ? null : quantiles(seconds) };
}
