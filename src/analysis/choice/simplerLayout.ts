// The next simpler layout than the chosen one, and what it loses.
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import type { ChoiceGoal } from "./choice.ts";
import type { RankedLayout, Simpler } from "./choiceResult.ts";
import { investmentOf } from "./layout.ts";
import type { Observation } from "./observed.ts";

/**
 * The layout with the largest investment below that of the first one; without investments, with the most stations below its number.
 * Of several the best. Null where no layout that can be chosen is simpler.
 */
export function simplerLayout([first, ...others]: readonly RankedLayout[], goal: ChoiceGoal): Simpler | null {
  if (!first) return null;
  const by = investmentOf(first.layout) === null ? "stations" : "investment";
  const sizeOf = ({ layout }: RankedLayout): number =>
    by === "stations" ? layout.scenario.stations.length : (investmentOf(layout) ?? Infinity);
  const simpler = others.filter(
    (each) => each.verdict !== "left out" && each.verdict !== "cannot meet the need" && sizeOf(each) < sizeOf(first),
  );
  const [ranked] = simpler.toSorted((one, other) => sizeOf(other) - sizeOf(one));
  if (!ranked) return null;
  const partsLost = differenceOf(first.observations, ranked.observations, ({ goodParts }) => goodParts, goal, 1);
  return { ranked, by, saved: sizeOf(first) - sizeOf(ranked), partsLost };
}

/** Over the replications that both have; above 0 where the first is better. Null where the other has none. */
export function behindOf(
  first: readonly Observation[],
  other: readonly Observation[],
  goal: ChoiceGoal,
  comparisons: number,
): Interval | null {
  if (first.length === 0 || other.length === 0) return null;
  const sign = goal.criterion.better === "more" ? 1 : -1;
  return differenceOf(first, other, ({ value }) => sign * value, goal, comparisons);
}

function differenceOf(
  first: readonly Observation[],
  other: readonly Observation[],
  of: (observation: Observation) => number,
  { confidence }: ChoiceGoal,
  comparisons: number,
): Interval {
  const common = Math.min(first.length, other.length);
  const [one, two] = [first, other].map((each) => each.slice(0, common).map(of)) as [number[], number[]];
  const { simultaneousHalfWidth, ...interval } = pairedDifference(one, two, { comparisons, confidence });
  return { ...interval, halfWidth: simultaneousHalfWidth };
}
