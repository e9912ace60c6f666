// The layouts that no other one dominates in output and cost.

export interface OutputAndCost {
  /** More is better. */
  readonly output: number;
  /** Less is better. */
  readonly cost: number;
}

/** The places of the layouts than which no other one has at least the output for at most the cost, and more of one; cheapest first. */
export declare function paretoSet(layouts: readonly OutputAndCost[]): readonly number[];
