// The steps with the largest shares of the critical path, and their scales for reruns.
import { mean } from "simple-statistics";
import type { StepScale } from "#cell/layers/planCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { stepGroups, type StepGroup } from "./resourceGroups.ts";

/**
 * All draws of a step become shorter and longer by this share. On the shipped cells a step of 1 % has twice the noise, because
 * parts are whole and the order of service changes. A step of 5 % crosses the kink where another step begins to set the pace.
 */
const SCALE_STEP = 0.02;
export const SCALE_FACTORS = { shorter: 1 - SCALE_STEP, longer: 1 + SCALE_STEP } as const;

/** Steps with a smaller share of the critical path have little effect. */
const LEAST_SHARE = 0.01;
const MOST_STEPS = 5;

/** The largest share comes first; a stop is not a step of the cycle. */
export function leadingSteps(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly StepGroup[] {
  return wholeSteps(scenario, answers)
    .map((step) => ({ step, share: mean(answers.map((answer) => shareAt(step.places, answer))) }))
    .filter(({ step, share }) => share >= LEAST_SHARE && !isStop(step))
    .toSorted((one, other) => other.share - one.share)
    .slice(0, MOST_STEPS)
    .map(({ step }) => step);
}

/** Steps with all their time, whichever resource it belongs to. */
export function wholeSteps(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly StepGroup[] {
  return stepGroups(scenario, answers[0]?.criticalShares ?? [], false);
}

export function isStop({ role }: StepGroup): boolean {
  return role === "stop.stand";
}

export function scalesOf({ members }: StepGroup): Readonly<Record<keyof typeof SCALE_FACTORS, StepScale>> {
  const { shorter, longer } = SCALE_FACTORS;
  const steps = [...new Map(members.map((member) => [JSON.stringify(member), member])).values()];
  return { shorter: { steps, factor: shorter }, longer: { steps, factor: longer } };
}

export function shareAt(places: readonly number[], { criticalShares }: ReplicationAnswer): number {
  return places.reduce((sum, place) => sum + (criticalShares[place]?.share ?? 0), 0);
}
