// The answer of one run of an order: when each quantity was made, and what was used until then.
import type { MeasureValue } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

/** Counted from 1; the same number always has the same random numbers. */
export interface OrderTask {
  readonly replication: number;
}

/** One campaign up to its last wanted part. */
export interface CampaignAnswer extends Pick<ReplicationAnswer, "elementTimes" | "resin"> {
  /** Seconds from the start of the campaign, its change included, to its last wanted part. */
  readonly seconds: number;
  readonly measures: readonly MeasureValue[];
  /** Of all operators together: on shift without breaks, and in tasks. */
  readonly operatorSeconds: { readonly onShift: number; readonly worked: number };
  /** Seconds from the start of the order at which each quantity was complete, in the order of the quantities. */
  readonly finished: readonly number[];
}

export interface OrderAnswer {
  readonly task: OrderTask;
  readonly campaigns: readonly CampaignAnswer[];
  /** Seconds from the start at which the whole order is complete; null where it was not within the longest run. */
  readonly finish: number | null;
  /** Good parts at the due date; the cell goes on after the order. Null where it is not counted. */
  readonly goodAtDue: number | null;
  /** Good parts of the campaign that was not completed; null where all were. */
  readonly made: number | null;
  readonly standstill: ReplicationAnswer["standstill"];
}
