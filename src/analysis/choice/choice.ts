// The procedure of a choice: from the observations so far to the replications still wanted of each layout.
import { areComparable, costStudy, type CostStudy } from "#analysis/indicators/costStudy.ts";
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import { feasibility, needShare, type Feasibility } from "#analysis/selection/feasibility.ts";
import { kimNelson, type Selection, type SelectionGoal } from "#analysis/selection/kimNelson.ts";
import { standstillIssue } from "#analysis/study/standstillIssue.ts";
import type { StationWindow } from "#analysis/window/stationWindow.ts";
import type { Criterion } from "./criterion.ts";
import type { Layout } from "./layout.ts";
import { costWindows, measuresOf, observationOf, type Need, type Observation } from "./observed.ts";
import { worthwhileOf, type Worthwhile } from "./worthwhile.ts";

export interface ChoiceGoal {
  readonly criterion: Criterion;
  readonly worthwhile: Worthwhile;
  /** Of the whole answer: the selection, and with a need the screening. */
  readonly confidence: number;
  readonly need: Need | null;
  /** No layout gets more. */
  readonly mostReplications: number;
}

export interface Course {
  readonly layout: Layout;
  readonly windows: readonly StationWindow[];
  /** Of replication 1, for the items that it has; null without costs. */
  readonly costs: CostStudy | null;
  readonly observations: readonly Observation[];
  /** Why it cannot be chosen at all; null where it can. */
  readonly leftOut: string | null;
}

export interface ChoiceState {
  readonly goal: ChoiceGoal;
  readonly courses: readonly Course[];
}

/** Replications of the first stage, from which the variances of the differences come. */
export const firstReplications = 20;

export function tasksOf(from: number, until: number): readonly ReplicationTask[] {
  return Array.from({ length: until - from }, (_, i) => ({ replication: from + i + 1, scale: null, brief: true }));
}

/** `trials`: the answer of each layout to replication 1, which also decides the windows of its costs. */
export function beginChoice(
  layouts: readonly Layout[],
  trials: readonly ReplicationAnswer[],
  goal: ChoiceGoal,
): ChoiceState {
  const courses = layouts.map((layout, i): Course => {
    const windows = costWindows(layout.scenario, trials[i]!);
    const costs = costStudy(layout.scenario, [trials[i]!], windows);
    return withObservations({ layout, windows, costs, observations: [], leftOut: null }, [trials[i]!], goal);
  });
  return { goal, courses };
}

export function withChoiceAnswers(
  state: ChoiceState,
  index: number,
  answers: readonly ReplicationAnswer[],
): ChoiceState {
  return { ...state, courses: state.courses.with(index, withObservations(state.courses[index]!, answers, state.goal)) };
}

function withObservations(course: Course, answers: readonly ReplicationAnswer[], goal: ChoiceGoal): Course {
  const { layout, windows } = course;
  const { scenario } = layout;
  const stuck = answers.find(({ standstill }) => standstill !== null);
  if (stuck) return { ...course, leftOut: standstillIssue(scenario, stuck).message };
  const found = answers.map((answer) => observationOf(scenario, answer, measuresOf(scenario, answer, windows), goal));
  const whole = found.filter((observation) => observation !== undefined);
  if (whole.length === found.length) return { ...course, observations: [...course.observations, ...whole] };
  return { ...course, leftOut: `It makes no good part in a replication, and has no ${goal.criterion.measure} there.` };
}

/** Whether all layouts give costs, and these are sums of the same items. */
export function haveSameCosts({ courses }: { readonly courses: readonly Pick<Course, "costs">[] }): boolean {
  return courses.every(({ costs }) => costs !== null && areComparable(costs, courses[0]!.costs));
}

/** How far the choice is; numbers of layouts are those of the state. */
export interface Progress {
  /** Undefined while not all candidates have the first stage, or where none is left. */
  readonly selection: Selection | undefined;
  /** Null without a need. */
  readonly screening: Feasibility | null;
  /** Layouts that the selection and the screening count, in the order of their numbers within these two. */
  readonly active: readonly number[];
  /** Places in `active` of the layouts that cannot meet the need. */
  readonly barred: readonly number[];
  /** Place in `active` of the layout that a worthwhile share is of. */
  readonly base: number;
  readonly selectionGoal: SelectionGoal;
}

export function progressOf({ goal, courses }: ChoiceState): Progress {
  const active = courses.flatMap(({ leftOut }, i) => (leftOut === null ? [i] : []));
  const observed = active.map((i) => courses[i]!.observations);
  const values = observed.map((each) => each.map(({ value }) => value));
  const screening = goal.need && active.length > 0 ? screened(observed, goal, active.length) : null;
  const barred = active.map((_, place) => place).filter((place) => screening?.verdicts[place]?.kind === "dropped");
  const first = values.map((each) => each.slice(0, firstReplications));
  const { difference, base } = worthwhileOf(goal.worthwhile, first);
  const selectionGoal = {
    better: goal.criterion.better,
    worthwhile: difference,
    confidence: goal.need ? 1 - (1 - goal.confidence) * (1 - needShare) : goal.confidence,
    firstReplications,
    mostReplications: goal.mostReplications,
  };
  const candidates = values.filter((_, place) => !barred.includes(place));
  const isBegun = candidates.length > 0 && candidates.every((each) => each.length >= firstReplications);
  const selection = isBegun ? kimNelson(values, selectionGoal, barred) : undefined;
  return { selection, screening, active, barred, base, selectionGoal };
}

/** `layouts`: how many share the allowed error. */
export function screened(
  observed: readonly (readonly Observation[])[],
  { confidence, need, mostReplications }: ChoiceGoal,
  layouts: number,
): Feasibility | null {
  if (!need) return null;
  const errorShare = ((1 - confidence) * needShare * observed.length) / layouts;
  return feasibility(
    observed.map((each) => each.map(({ met }) => met === true)),
    { chance: need.chance, errorShare, mostReplications },
  );
}

/** Without a need every layout is kept. */
export function isKept(screening: Feasibility | null, place: number): boolean {
  return screening === null || screening.verdicts[place]?.kind === "kept";
}
