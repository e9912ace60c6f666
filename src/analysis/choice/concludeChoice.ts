// From a finished procedure to its result: the chosen layout and the ranking, with intervals that hold together.
import { fixedSizeReplications } from "#analysis/selection/fixedSizeReplications.ts";
import type { Selection } from "#analysis/selection/kimNelson.ts";
import { rareStops } from "#analysis/study/rareStops.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { haveSameCosts, isKept, progressOf, type ChoiceState, type Course, type Progress } from "./choice.ts";
import type { Choice, LayoutVerdict, RankedLayout } from "./choiceResult.ts";
import { efficientLayouts } from "./efficientLayouts.ts";
import type { Observation } from "./observed.ts";
import { behindOf, simplerLayout } from "./simplerLayout.ts";

export function concludeChoice(state: ChoiceState): Choice {
  const { goal, courses } = state;
  const progress = progressOf(state);
  const { selection, screening, active, barred } = progress;
  const verdicts = courses.map((_, index) => verdictOf(active.indexOf(index), progress));
  const ranking = ranked(state, progress, verdicts);
  const candidates = active.length - barred.length;
  const isChosen = selection?.kind === "selected" && isKept(screening, selection.layout);
  return {
    goal,
    worthwhile: progress.selectionGoal.worthwhile,
    base: courses[active[progress.base] ?? 0]!.layout.scenario.name,
    verdict: candidates === 0 ? "none" : isChosen ? "chosen" : "undecided",
    ranking,
    simpler: simplerLayout(ranking, goal),
    replications: courses.reduce((sum, { observations }) => sum + observations.length, 0),
    spent: selection && candidates > 1 ? spentOf(state, progress, selection) : null,
    zone: screening?.zone ?? null,
    rareStops: courses.flatMap(({ layout, observations }) => {
      const answers = observations.map(({ stops }) => stops);
      return rareStops(layout.scenario, answers, new Set()) ?? [];
    }),
  };
}

function spentOf({ courses }: ChoiceState, progress: Progress, selection: Selection): Choice["spent"] {
  const { active, barred, selectionGoal } = progress;
  const values = active.map((index) => courses[index]!.observations.map(({ value }) => value));
  const candidates = active.map((_, place) => place).filter((place) => !barred.includes(place));
  const usedBy = (place: number): number =>
    selection.dropped.find(({ layout }) => layout === place)?.replication ?? selection.replications;
  return {
    used: candidates.reduce((sum, place) => sum + usedBy(place), 0),
    layouts: candidates.length,
    each: fixedSizeReplications(values, selectionGoal, barred),
  };
}

/** `place` among those that the selection counts, −1 where the layout was left out. */
function verdictOf(place: number, { selection, screening, barred }: Progress): LayoutVerdict {
  if (place === -1) return "left out";
  if (barred.includes(place)) return "cannot meet the need";
  if (selection?.dropped.some(({ layout }) => layout === place) === true) return "dropped";
  if (selection?.kind !== "selected") return "not decided";
  if (!isKept(screening, place)) return "not decided";
  return selection.layout === place ? "best" : "equal to the best";
}

const inOrder: readonly LayoutVerdict[] = [
  "best",
  "equal to the best",
  "not decided",
  "dropped",
  "cannot meet the need",
  "left out",
];

/** By verdict, then by the mean of the criterion. */
function ranked(state: ChoiceState, progress: Progress, verdicts: readonly LayoutVerdict[]): readonly RankedLayout[] {
  const { courses, goal } = state;
  const sign = goal.criterion.better === "more" ? -1 : 1;
  const order = courses
    .map((_, index) => index)
    .toSorted(
      (one, other) =>
        inOrder.indexOf(verdicts[one]!) - inOrder.indexOf(verdicts[other]!) ||
        sign * (meanOf(courses[one]!) - meanOf(courses[other]!)),
    );
  const efficient = efficientLayouts(courses, verdicts);
  const [first = 0] = order;
  return order.map((index) => ({
    ...measured(state, index),
    ...distanceOf(state, progress, { index, first, verdict: verdicts[index]! }),
    efficiency: efficient[index]!,
  }));
}

type Measured = Pick<
  RankedLayout,
  "layout" | "value" | "goodParts" | "costPerHour" | "costPerThousand" | "observations"
>;

function measured(state: ChoiceState, index: number): Measured & Pick<RankedLayout, "replications" | "leftOut"> {
  const { courses, goal } = state;
  const { layout, observations, leftOut } = courses[index]!;
  const hasCosts = haveSameCosts(state);
  const interval = (of: (observation: Observation) => number | null): Interval | null =>
    intervalOf(observations, of, { confidence: goal.confidence, layouts: courses.length });
  return {
    layout,
    value: interval(({ value }) => value),
    goodParts: interval(({ goodParts }) => goodParts),
    costPerHour: hasCosts ? interval(({ costPerHour }) => costPerHour) : null,
    costPerThousand: hasCosts ? interval(({ costPerThousand }) => costPerThousand) : null,
    observations,
    replications: observations.length,
    leftOut,
  };
}

type Distance = Pick<RankedLayout, "verdict" | "behind" | "isWithin" | "dropped" | "need">;

/** From the first layout of the ranking. */
function distanceOf(
  { courses, goal }: ChoiceState,
  { active, selection, screening, selectionGoal }: Progress,
  { index, first, verdict }: { readonly index: number; readonly first: number; readonly verdict: LayoutVerdict },
): Distance {
  const place = active.indexOf(index);
  const [best, own] = [courses[first]!.observations, courses[index]!.observations];
  const behind = index === first ? null : behindOf(best, own, goal, courses.length - 1);
  const canBeChosen = verdict !== "left out" && verdict !== "cannot meet the need";
  const lost = selection?.dropped.find(({ layout }) => layout === place);
  return {
    verdict,
    behind,
    isWithin: behind && canBeChosen ? behind.mean + (behind.halfWidth ?? 0) < selectionGoal.worthwhile : null,
    dropped: lost ? { at: lost.replication, by: courses[active[lost.by]!]!.layout.scenario.name } : null,
    need: screening?.verdicts[place] ?? null,
  };
}

function meanOf({ observations }: Course): number {
  return observations.reduce((sum, { value }) => sum + value, 0) / Math.max(1, observations.length);
}

/** All layouts together hold the confidence (Bonferroni). */
function intervalOf(
  observations: readonly Observation[],
  of: (observation: Observation) => number | null,
  { confidence, layouts }: { readonly confidence: number; readonly layouts: number },
): Interval | null {
  const values = observations.flatMap((observation) => of(observation) ?? []);
  if (values.length === 0 || values.length < observations.length) return null;
  return meanInterval(values, 1 - (1 - confidence) / layouts);
}
