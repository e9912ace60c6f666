// Where the bottleneck sits: each step's share of the critical path, beside utilization, slack and elasticity.
import type { StepScale } from "#cell/layers/planCell.ts";
import { naturalOrder } from "#foundation/naturalOrder.ts";
import type { Scenario } from "#scenario/scenario.ts";
import {
  elasticityMethod,
  elasticityMethods,
  elasticityTargets,
  finiteDifference,
  SCALE_FACTORS,
} from "./elasticity.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { isActiveState } from "#cell/words/isActiveState.ts";

export interface BottleneckRow {
  readonly rank: number;
  readonly resource: string;
  readonly step: string;
  readonly criticalShare: Interval;
  /** The part of the share whose start was bound by more than one completion. */
  readonly tiedShare: number;
  /** Share of the observed time in which the resource was active. */
  readonly utilization: number;
  /** Shares of the observed time in which the resource's active period was the longest: in all, and while nobody shared it. */
  readonly longestActiveShare: number;
  readonly longestActiveAlone: number;
  /** Seconds a shot by which the step may grow before it binds the ideal cycle. */
  readonly slackSeconds: number | null;
  readonly elasticity: Interval | null;
  readonly elasticityMethod: string | null;
}

type Elasticity = Pick<BottleneckRow, "elasticity" | "elasticityMethod">;

/** `answersTo` gives the replications in which a step was scaled. */
export function bottleneckRows(
  scenario: Scenario,
  answers: readonly ReplicationAnswer[],
  answersTo: (scale: StepScale) => readonly ReplicationAnswer[],
  ideal: IdealCycle,
): readonly BottleneckRow[] {
  const elasticityOf = elasticities(scenario, answers, answersTo);
  const steps = answers[0]?.criticalShares ?? [];
  // An operator has no step of its own: the removal belongs to the station. It is busy or not all the same.
  const helpers = (answers[0]?.longestActive ?? [])
    .filter(({ resource }) => steps.every((step) => step.resource !== resource))
    .map(({ resource }) => ({ resource, step: "" }));
  return [...steps, ...helpers]
    .map(({ resource, step }, i) => {
      const criticalShare = meanInterval(answers.map((answer) => answer.criticalShares[i]?.share ?? 0));
      return {
        resource,
        step,
        criticalShare,
        tiedShare: meanInterval(answers.map((answer) => answer.criticalShares[i]?.tied ?? 0)).mean,
        ...activity(resource, answers),
        slackSeconds: ideal.slackOf(resource, step),
        ...elasticityOf(resource, step, criticalShare),
      };
    })
    .toSorted(byShare)
    .map((row, index) => ({ rank: index + 1, ...row }));
}

function byShare(one: Omit<BottleneckRow, "rank">, other: Omit<BottleneckRow, "rank">): number {
  return (
    other.criticalShare.mean - one.criticalShare.mean ||
    naturalOrder(one.resource, other.resource) ||
    naturalOrder(one.step, other.step)
  );
}

function activity(
  resource: string,
  answers: readonly ReplicationAnswer[],
): Pick<BottleneckRow, "utilization" | "longestActiveShare" | "longestActiveAlone"> {
  const longest = answers.map((answer) => answer.longestActive.find((active) => active.resource === resource));
  return {
    utilization: utilization(resource, answers),
    longestActiveShare: meanInterval(longest.map((active) => (active ? active.sole + active.shifting : 0))).mean,
    longestActiveAlone: meanInterval(longest.map((active) => active?.sole ?? 0)).mean,
  };
}

function utilization(resource: string, answers: readonly ReplicationAnswer[]): number {
  const shares = answers.map((answer) =>
    answer.stateShares
      .filter((state) => state.resource === resource && isActiveState(state.state, state.kind))
      .reduce((sum, { share }) => sum + share, 0),
  );
  return meanInterval(shares).mean;
}

function elasticities(
  scenario: Scenario,
  answers: readonly ReplicationAnswer[],
  answersTo: (scale: StepScale) => readonly ReplicationAnswer[],
): (resource: string, step: string, share: Interval) => Elasticity {
  const method = elasticityMethod(scenario);
  const targets = elasticityTargets(scenario, answers);
  const none = { elasticity: null, elasticityMethod: null };
  return (resource, step, share) => {
    if (method !== "difference") {
      return { elasticity: { ...share, mean: -share.mean }, elasticityMethod: elasticityMethods[method] };
    }
    const isTarget = targets.some((target) => target.resource === resource && target.step === step);
    const scaled = (factor: number): readonly ReplicationAnswer[] => answersTo({ resource, step, factor });
    const { shorter, longer } = SCALE_FACTORS;
    const elasticity = isTarget ? finiteDifference(scaled(shorter), scaled(longer)) : null;
    return elasticity ? { elasticity, elasticityMethod: elasticityMethods.difference } : none;
  };
}
