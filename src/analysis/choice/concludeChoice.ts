// From a finished procedure to its result: the chosen layout and the ranking, with intervals that hold together.
import { fixedSizeReplications } from "#analysis/selection/fixedSizeReplications.ts";
import type { Selection } from "#analysis/selection/kimNelson.ts";
import type { NeedVerdict } from "#analysis/selection/feasibility.ts";
import { rareStops, type RareStops } from "#analysis/study/rareStops.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { haveSameCosts, isKept, progressOf } from "./choice.ts";
import type { ChoiceGoal, ChoiceState, Course, Progress } from "./choice.ts";
import { efficientLayouts, type Efficiency } from "./efficientLayouts.ts";
import type { Layout } from "./layout.ts";
import type { Observation } from "./observed.ts";
import { behindOf, simplerLayout, type Simpler } from "./simplerLayout.ts";

export type LayoutVerdict =
  "best" | "equal to the best" | "not decided" | "dropped" | "cannot meet the need" | "left out";

export interface RankedLayout {
  readonly layout: Layout;
  readonly verdict: LayoutVerdict;
  /** Null where it was left out. The intervals of one measure hold for all layouts together. */
  readonly value: Interval | null;
  readonly goodParts: Interval | null;
  /** Null without costs of the same items. */
  readonly costPerHour: Interval | null;
  readonly costPerThousand: Interval | null;
  /** By how much the first layout of the ranking is better; null for itself, and where it was left out. */
  readonly behind: Interval | null;
  /** Whether that interval lies below the worthwhile difference; null where there is none, or where the layout cannot be chosen. */
  readonly isWithin: boolean | null;
  readonly dropped: { readonly at: number; readonly by: string } | null;
  readonly need: NeedVerdict | null;
  readonly replications: number;
  /** Why it was left out. */
  readonly leftOut: string | null;
  readonly efficiency: Efficiency;
  readonly observations: readonly Observation[];
}

export interface Choice {
  readonly goal: ChoiceGoal;
  /** In the unit of the criterion; a share is one of the layout `base`. */
  readonly worthwhile: number;
  readonly base: string;
  /** `none`: no layout can meet the need, or all were left out. */
  readonly verdict: "chosen" | "none" | "undecided";
  /** Best first. */
  readonly ranking: readonly RankedLayout[];
  readonly simpler: Simpler | null;
  /** All that were made. */
  readonly replications: number;
  /** Those that the selection used, and those that one of fixed size needs; null where there is nothing to select. */
  readonly spent: { readonly used: number; readonly layouts: number; readonly each: number } | null;
  /** Chances between these may be judged either way; null without a need. */
  readonly zone: { readonly low: number; readonly high: number } | null;
  readonly rareStops: readonly RareStops[];
}

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
    base: courses[active[0] ?? 0]!.layout.scenario.name,
    verdict: candidates === 0 ? "none" : isChosen ? "chosen" : "undecided",
    ranking,
    simpler: candidates === 0 ? null : simplerLayout(ranking, goal),
    replications: courses.reduce((sum, { observations }) => sum + observations.length, 0),
    spent: selection && candidates > 1 ? spentOf(state, progress, selection) : null,
    zone: screening?.zone ?? null,
    rareStops: courses.flatMap(({ layout, observations }) =>
      observations.length === 0
        ? []
        : (rareStops(
            layout.scenario,
            observations.map(({ stops }) => stops),
            new Set(),
          ) ?? []),
    ),
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
  const hasCosts = haveSameCosts(state);
  const first = courses[order[0]!]!;
  const { worthwhile } = progress.selectionGoal;
  return order.map((index, rank) => {
    const { layout, observations, leftOut } = courses[index]!;
    const place = progress.active.indexOf(index);
    const dropped = progress.selection?.dropped.find((each) => each.layout === place);
    const verdict = verdicts[index]!;
    const canBeChosen = verdict !== "left out" && verdict !== "cannot meet the need";
    const behind = rank === 0 ? null : behindOf(first.observations, observations, goal, courses.length - 1);
    const interval = (of: (observation: Observation) => number | null): Interval | null =>
      intervalOf(observations, of, { confidence: goal.confidence, layouts: courses.length });
    return {
      layout,
      verdict,
      value: interval(({ value }) => value),
      goodParts: interval(({ goodParts }) => goodParts),
      costPerHour: hasCosts ? interval(({ costPerHour }) => costPerHour) : null,
      costPerThousand: hasCosts ? interval(({ costPerThousand }) => costPerThousand) : null,
      behind,
      isWithin: behind && canBeChosen ? behind.mean + (behind.halfWidth ?? 0) < worthwhile : null,
      dropped:
        dropped && verdict === "dropped"
          ? { at: dropped.replication, by: courses[progress.active[dropped.by]!]!.layout.scenario.name }
          : null,
      need: progress.screening?.verdicts[place] ?? null,
      replications: observations.length,
      leftOut,
      efficiency: efficient[index]!,
      observations,
    };
  });
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
