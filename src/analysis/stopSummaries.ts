// Each kind of stop over the replications: how often, how long, how far apart.
import type { StopRecord } from "#cell/cellRecord.ts";
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import { meanInterval, type Interval } from "./interval.ts";
import type { ReplicationAnswer } from "./replicationAnswer.ts";

export interface StopSummary {
  readonly resource: string;
  readonly stop: string;
  readonly clock: StopRecord["clock"];
  /** In one replication. */
  readonly count: Interval;
  readonly hours: Interval;
  /** On the stop's clock from the end of one to the next, hours or cycles, over all replications; null where there was none. */
  readonly meanBetween: number | null;
  /** Hours, over all replications; null where there was none. */
  readonly meanRepair: number | null;
}

const ticksPerHour = 3600 * TICKS_PER_SECOND;

/** In the order of the records; every replication of a cell has the same stops. */
export function stopSummaries(answers: readonly Pick<ReplicationAnswer, "stops">[]): readonly StopSummary[] {
  return (answers[0]?.stops ?? []).map(({ resource, stop, clock }, i) => {
    const records = answers.flatMap(({ stops }) => stops?.[i] ?? []);
    const sum = (of: (record: StopRecord) => number): number => records.reduce((total, each) => total + of(each), 0);
    const stops = sum(({ count }) => count);
    const unit = clock === "cycles" ? 1 : ticksPerHour;
    return {
      resource,
      stop,
      clock,
      count: meanInterval(records.map(({ count }) => count)),
      hours: meanInterval(records.map(({ stoppedTicks }) => stoppedTicks / ticksPerHour)),
      // Pooled: a replication that saw no stop still tells how long its clock ran without one.
      meanBetween: stops === 0 ? null : sum(({ clocked }) => clocked) / unit / stops,
      meanRepair: stops === 0 ? null : sum(({ stoppedTicks }) => stoppedTicks) / ticksPerHour / stops,
    };
  });
}
