// The layouts than which no other one makes as many good parts for less: the Pareto sets of output against cost.
import { paretoSet } from "#analysis/selection/paretoSet.ts";
import { haveSameCosts, type Course } from "./choice.ts";
import type { Efficiency, LayoutVerdict } from "./choiceResult.ts";
import { investmentOf } from "./layout.ts";
import type { Observation } from "./observed.ts";

/** By the means. */
export function efficientLayouts(
  courses: readonly Course[],
  verdicts: readonly LayoutVerdict[],
): readonly Efficiency[] {
  const canBeChosen = courses.map(
    ({ observations }, i) =>
      observations.length > 0 && verdicts[i] !== "left out" && verdicts[i] !== "cannot meet the need",
  );
  const isCosted = haveSameCosts({ courses });
  const efficient = (costOf: (course: Course) => number | null): readonly (boolean | null)[] => {
    const costs = courses.map((course, i) => (canBeChosen[i] === true ? costOf(course) : null));
    const places = costs.flatMap((cost, i) => (cost === null ? [] : [i]));
    const set = paretoSet(
      places.map((i) => ({ output: meanOf(courses[i]!, ({ goodParts }) => goodParts), cost: costs[i]! })),
    ).map((place) => places[place]!);
    return costs.map((cost, i) => (cost === null ? null : set.includes(i)));
  };
  const perHour = efficient((course) => (isCosted ? meanOf(course, ({ costPerHour }) => costPerHour ?? 0) : null));
  const investment = efficient(({ layout }) => investmentOf(layout));
  return courses.map((_, i) => ({ perHour: perHour[i] ?? null, investment: investment[i] ?? null }));
}

function meanOf({ observations }: Course, of: (observation: Observation) => number): number {
  return observations.reduce((sum, observation) => sum + of(observation), 0) / observations.length;
}
