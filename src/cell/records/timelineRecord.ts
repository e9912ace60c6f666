// What a short stretch of one run looked like: who was in which state when, and which steps held everything up, as plain rows.
import type { StateKind } from "#cell/words/stateNames.ts";
import type { CellStep } from "#cell/words/cellTable.ts";

/** Seconds from the start of the stretch. */
export interface TimelineInterval {
  readonly resource: string;
  readonly state: string;
  readonly kind: StateKind;
  readonly start: number;
  readonly end: number;
  /** It began before the stretch or goes on after it, so its length is not its duration. */
  readonly isCut: boolean;
}

/** One link of the critical path: the time for which the following steps waited for this step. */
export interface ChainSegment extends Partial<Pick<CellStep, "role" | "task">> {
  readonly resource: string;
  readonly step: string;
  /** Whose cycle the step belongs to: a station, or the resource itself. */
  readonly process: string;
  readonly start: number;
  readonly end: number;
  /** More than one completion came latest at once; the chain follows one of them. */
  readonly tied: boolean;
}

export interface TimelineRecord {
  readonly replication: number;
  /** Seconds of the run at which the stretch begins. */
  readonly from: number;
  readonly seconds: number;
  /** In the order of the cell's plan. */
  readonly resources: readonly string[];
  /** Resource by resource, each without gap or overlap. */
  readonly intervals: readonly TimelineInterval[];
  /** In the order of time, without gap or overlap. */
  readonly chain: readonly ChainSegment[];
}
