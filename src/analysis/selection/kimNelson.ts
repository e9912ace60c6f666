// The best of several layouts by a sequential selection under common random numbers.
import { invariant } from "#foundation/invariant.ts";
import { boundaryAt, layoutPairs, leadOf, nextDrop, type LayoutPair, type PairGoal } from "./layoutPairs.ts";

export interface SelectionGoal extends PairGoal {
  /** No layout gets more. */
  readonly mostReplications: number;
}

interface DroppedLayout {
  readonly layout: number;
  /** The number of replications that it had when it was dropped. */
  readonly replication: number;
  /** The layout with the largest lead over it at that replication. */
  readonly by: number;
}

interface Course {
  /** In the order in which they were dropped. */
  readonly dropped: readonly DroppedLayout[];
  /** Replications of each survivor that the selection has used. */
  readonly replications: number;
}

export type Selection = Course &
  (
    | {
        readonly kind: "running";
        readonly survivors: readonly number[];
        /** Replications that each survivor needs next: until one more is dropped, if the differences stay as they are. */
        readonly more: number;
      }
    | {
        readonly kind: "selected";
        readonly layout: number;
        /** Others that are equal to it to the last replication; it is the first of them. */
        readonly tied: readonly number[];
      }
    | { readonly kind: "undecided"; readonly survivors: readonly number[] }
  );

/**
 * One step of the fully sequential selection of Kim and Nelson with c = 1. All survivors have the same replications. After each one
 * from the first stage on, a layout is dropped where another one leads by more than W(r) = max(0, D/2 (h² S² / D² − r)): the lead is
 * the sum of the paired differences, S² their variance in the first stage, D the worthwhile difference. The step is repeated from the
 * first replication in each call, so that the result does not depend on how many replications a call adds.
 *
 * Guarantee: where the best layout is at least D ahead, it is selected with at least this confidence, for normal values and any
 * correlation by common random numbers. Where others are less than D behind, the selected layout is to be within D of the best; the
 * paper does not prove that part, and tests measure it.
 *
 * Shape: `values[layout][replication − 1]`; a dropped layout needs no values beyond the replication at which it was dropped. `barred`
 * layouts cannot be selected and drop no other one, but count among the comparisons: a screening that uses the same replications then
 * costs no confidence.
 *
 * Source: Kim and Nelson, ACM Transactions on Modeling and Computer Simulation 11 (2001) 251 (from memory).
 */
export function kimNelson(
  values: readonly (readonly number[])[],
  goal: SelectionGoal,
  barred: readonly number[] = [],
): Selection {
  const { worthwhile, firstReplications: first, mostReplications: most } = goal;
  invariant(worthwhile > 0, "a worthwhile difference is above 0", { worthwhile });
  invariant(most >= first, "the cap is not below the first stage", { first, most });
  const candidates = values.flatMap((_, layout) => (barred.includes(layout) ? [] : [layout]));
  invariant(candidates.length > 0, "a selection needs a layout");
  const course = { dropped: [], replications: madeBy(values, candidates) };
  if (candidates.length === 1) return { kind: "selected", layout: candidates[0]!, tied: [], ...course };
  if (course.replications >= first) return selectionFrom(values, candidates, goal);
  return { kind: "running", survivors: candidates, more: first - course.replications, ...course };
}

/** From the first stage to the last replication that all survivors have. */
function selectionFrom(
  values: readonly (readonly number[])[],
  candidates: readonly number[],
  { worthwhile, better, mostReplications, ...goal }: SelectionGoal,
): Selection {
  let survivors = candidates;
  let pairs = layoutPairs(values, candidates, { worthwhile, better, ...goal });
  const dropped: DroppedLayout[] = [];
  for (let replications = goal.firstReplications; ; replications++) {
    const lost = droppedAt(pairs, survivors, replications, worthwhile);
    if (lost.length > 0) {
      dropped.push(...lost);
      survivors = survivors.filter((layout) => !lost.some((each) => each.layout === layout));
      pairs = pairs.filter(({ layout, rival }) => survivors.includes(layout) && survivors.includes(rival));
    }
    const course = { dropped, replications };
    // Beyond the closing of all pairs only equal sums are left.
    if (pairs.every(({ closing }) => replications > closing)) {
      return { kind: "selected", layout: survivors[0]!, tied: survivors.slice(1), ...course };
    }
    if (replications === mostReplications) return { kind: "undecided", survivors, ...course };
    if (replications === madeBy(values, survivors)) {
      const next = Math.min(mostReplications, nextDrop(pairs, replications, worthwhile));
      return { kind: "running", survivors, more: next - replications, ...course };
    }
    for (const pair of pairs) pair.behind += leadOf(values, pair, replications, better);
  }
}

function madeBy(values: readonly (readonly number[])[], layouts: readonly number[]): number {
  return Math.min(...layouts.map((layout) => values[layout]!.length));
}

function droppedAt(
  pairs: readonly LayoutPair[],
  survivors: readonly number[],
  replication: number,
  worthwhile: number,
): readonly DroppedLayout[] {
  const lost = pairs.filter((pair) => pair.behind > boundaryAt(pair, replication, worthwhile));
  return survivors.flatMap((layout) => {
    const [worst] = lost.filter((pair) => pair.layout === layout).toSorted((a, b) => b.behind - a.behind);
    return worst ? [{ layout, replication, by: worst.rival }] : [];
  });
}
