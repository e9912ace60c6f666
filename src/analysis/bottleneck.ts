// Where the bottleneck sits: each step's share of the critical path, beside utilization, slack and elasticity.
import type { StepScale } from "#cell/planCell.ts";
import { codePointOrder } from "#foundation/codePointOrder.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { elasticityMethod, elasticityMethods, elasticityTargets, finiteDifference } from "./elasticity.ts";
import type { IdealCycle } from "./idealCycle.ts";
import { meanInterval, type Interval } from "./interval.ts";
import type { ReplicationAnswer } from "./replicationAnswer.ts";
import { isActive } from "./utilization.ts";

export interface BottleneckRow {
  readonly rank: number;
  readonly resource: string;
  readonly step: string;
  readonly criticalShare: Interval;
  /** The part of the share whose start was bound by more than one completion. */
  readonly tiedShare: number;
  /** Share of the observed time in which the resource was active. */
  readonly utilization: number;
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
  return (answers[0]?.criticalShares ?? [])
    .map(({ resource, step }, i) => {
      const criticalShare = meanInterval(answers.map((answer) => answer.criticalShares[i]?.share ?? 0));
      return {
        resource,
        step,
        criticalShare,
        tiedShare: meanInterval(answers.map((answer) => answer.criticalShares[i]?.tied ?? 0)).mean,
        utilization: utilization(resource, answers),
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
    codePointOrder(one.resource, other.resource) ||
    codePointOrder(one.step, other.step)
  );
}

function utilization(resource: string, answers: readonly ReplicationAnswer[]): number {
  const shares = answers.map((answer) =>
    answer.stateShares
      .filter((state) => state.resource === resource && isActive(state.state, state.kind))
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
    const scale = targets.find((target) => target.resource === resource && target.step === step);
    const elasticity = scale ? finiteDifference(answers, answersTo(scale)) : null;
    return elasticity ? { elasticity, elasticityMethod: elasticityMethods.difference } : none;
  };
}
