// Which layouts meet a need with the wanted chance, by a sequential decision on each one.

export interface NeedGoal {
  /** The least chance of a run that meets the need. */
  readonly chance: number;
  /** Probability of any wrong decision among all layouts outside the zone. */
  readonly errorShare: number;
  readonly mostReplications: number;
}

export interface NeedVerdict {
  /** `open`: more replications are needed; `undecided`: the cap was reached. */
  readonly kind: "kept" | "dropped" | "open" | "undecided";
  /** Replications that the decision has used, and those among them that met the need. */
  readonly replications: number;
  readonly met: number;
}

export interface Feasibility {
  /** Of each layout. */
  readonly verdicts: readonly NeedVerdict[];
  /** Replications that each open layout needs next; 0 where none is open. */
  readonly more: number;
  /** A layout whose true chance lies between these may be kept or dropped. */
  readonly zone: { readonly low: number; readonly high: number };
}

/** Part of the allowed error that a need takes; the selection among the layouts that meet it keeps the rest. */
export const needShare = 0.5;

/** `outcomes[layout][replication − 1]`: whether the run met the need. A decided layout needs no further outcomes. */
export declare function feasibility(outcomes: readonly (readonly boolean[])[], goal: NeedGoal): Feasibility;
