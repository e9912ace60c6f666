// The layouts that no other one dominates in output and cost.

export interface OutputAndCost {
  /** More is better. */
  readonly output: number;
  /** Less is better. */
  readonly cost: number;
}

/** The places of the layouts that are not dominated, cheapest first; of two that are equal in both, both stay. */
export function paretoSet(layouts: readonly OutputAndCost[]): readonly number[] {
  return layouts
    .flatMap((own, place) => (layouts.some((other) => dominates(other, own)) ? [] : [place]))
    .toSorted((a, b) => layouts[a]!.cost - layouts[b]!.cost);
}

/** At least the output for at most the cost, and better in one of them. */
function dominates(one: OutputAndCost, other: OutputAndCost): boolean {
  const isAsGood = one.output >= other.output && one.cost <= other.cost;
  return isAsGood && (one.output > other.output || one.cost < other.cost);
}
