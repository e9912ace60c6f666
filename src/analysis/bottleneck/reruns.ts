// Which replications are made again with a step shorter or longer, within a budget that counts replications, not seconds.
import { mean } from "simple-statistics";
import type { StepScale } from "#cell/layers/planCell.ts";
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import { scalesOf, shareAt } from "./leadingSteps.ts";
import { centralSlope, oneSidedSlope } from "./rerunSlopes.ts";
import type { StepGroup } from "./resourceGroups.ts";

/** Few: until the leading steps are settled or half the work of the run is spent. Full: all replications of all leading steps. */
export type Sensitivity = "few" | "full" | "off";

export interface Reruns {
  readonly sensitivity: Sensitivity;
  /** The replications in which a step was scaled, in their order. */
  readonly answersTo: (scale: StepScale) => readonly ReplicationAnswer[];
}

/** Reruns take at most this share of the replications of the cell as it is. */
const BUDGET = 0.5;
/** Reruns of a step at first and at a time after that; even numbers, half of them shorter. */
const FIRST = 4;
const MORE = 2;
/** Two steps are begun together where the second has at least this part of the first one's critical share: their order is open. */
const RIVAL = 0.5;
/** With fewer replications the budget does not reach one step. */
export const FEWEST_REPLICATIONS = FIRST / BUDGET;

/** A step is settled at this half width of its elasticity: 1 % more time costs output to within 0.05 %. */
export const SETTLED = 0.05;

/** `made` are the replications of the cell as it is, `steps` the leading steps in their order. */
export function rerunsWanted(
  steps: readonly StepGroup[],
  made: readonly ReplicationAnswer[],
  reruns: Reruns,
): readonly ReplicationTask[] {
  if (reruns.sensitivity === "off") return [];
  return reruns.sensitivity === "full" ? allReruns(steps, made, reruns) : nextReruns(steps, made, reruns);
}

function allReruns(
  steps: readonly StepGroup[],
  made: readonly ReplicationAnswer[],
  { answersTo }: Reruns,
): readonly ReplicationTask[] {
  return steps
    .flatMap((step) => Object.values(scalesOf(step)))
    .flatMap((scale) => {
      const done = new Set(answersTo(scale).map(({ task }) => task.replication));
      const tasks = made.map(({ task: { replication } }) => ({ replication, scale }));
      return tasks.filter(({ replication }) => !done.has(replication));
    });
}

/** The step with the widest interval goes on until all that were begun are settled; then the next step begins. */
function nextReruns(
  steps: readonly StepGroup[],
  made: readonly ReplicationAnswer[],
  reruns: Reruns,
): readonly ReplicationTask[] {
  const tried = steps.map((step) => {
    const count = rerunsOf(step, reruns).length;
    return { step, count, halfWidth: slopeOf(step, made, reruns)?.halfWidth ?? 0 };
  });
  const begun = tried.filter(({ count }) => count > 0);
  const left = Math.floor(BUDGET * made.length) - begun.reduce((sum, { count }) => sum + count, 0);
  const widest = begun.filter((each) => each.halfWidth > SETTLED).toSorted((a, b) => b.halfWidth - a.halfWidth)[0];
  if (widest) return left < MORE ? [] : tasksOf(widest.step, widest.count, MORE);
  const atOnce = begun.length === 0 && areRivals(steps, made) ? 2 : 1;
  const next = tried.slice(begun.length).slice(0, Math.min(atOnce, Math.floor(left / FIRST)));
  return next.flatMap(({ step }) => tasksOf(step, 0, FIRST));
}

function areRivals([first, second]: readonly StepGroup[], made: readonly ReplicationAnswer[]): boolean {
  if (!first || !second) return false;
  const shareOf = ({ places }: StepGroup): number => mean(made.map((answer) => shareAt(places, answer)));
  return shareOf(second) >= RIVAL * shareOf(first);
}

/** The next replications; odd ones have the step longer, even ones shorter. */
function tasksOf(step: StepGroup, done: number, count: number): readonly ReplicationTask[] {
  const { shorter, longer } = scalesOf(step);
  return Array.from({ length: count }, (_, i) => {
    const replication = done + i + 1;
    return { replication, scale: replication % 2 === 1 ? longer : shorter };
  });
}

function rerunsOf(step: StepGroup, { answersTo }: Reruns): readonly ReplicationAnswer[] {
  const { shorter, longer } = scalesOf(step);
  return [...answersTo(longer), ...answersTo(shorter)];
}

/** Null where the step was not run again, or no parts were made. */
export function slopeOf(step: StepGroup, made: readonly ReplicationAnswer[], reruns: Reruns): Interval | null {
  if (reruns.sensitivity === "few") return oneSidedSlope(made, rerunsOf(step, reruns));
  const { shorter, longer } = scalesOf(step);
  return centralSlope(reruns.answersTo(shorter), reruns.answersTo(longer));
}
