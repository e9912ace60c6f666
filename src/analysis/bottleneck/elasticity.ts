// The effect of the time of one step on the throughput, and the method that gives it.
import { mean } from "simple-statistics";
import type { StepScale } from "#cell/layers/planCell.ts";
import type { Scenario, ServerSpec } from "#scenario/scenario.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { areEqual } from "#analysis/ideal/orderedShots.ts";
import { callers } from "#analysis/ideal/takeawayOwners.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { stepGroups, type StepGroup } from "./resourceGroups.ts";

const elasticityMethods = {
  exact: "critical path, exact for a fixed order",
  estimate: "critical path, estimate (equal stations, first-ready)",
  difference: "paired finite difference",
} as const;

export type ElasticityMethod = keyof typeof elasticityMethods;

/**
 * All draws of the step become shorter and longer by this share. It is small enough for a slope and large enough to change the
 * count of whole parts. Both directions, because near a balance a shorter step has less effect than a longer one.
 */
const SCALE_STEP = 0.01;
export const SCALE_FACTORS = { shorter: 1 - SCALE_STEP, longer: 1 + SCALE_STEP } as const;

/** Steps with a smaller share of the critical path have little effect, and each further step costs two runs. */
const LEAST_SHARE = 0.01;
const MOST_STEPS = 5;

/**
 * The critical path gives the slope only where nothing else changes: exactly with a fixed order, nearly with equal stations.
 * Where a longer step may change which station is next, the cell is run again.
 */
export function elasticityMethod(scenario: Scenario): ElasticityMethod {
  const { stations, valve } = scenario;
  if (sharesCrew(scenario) || changesCourse(scenario)) return "difference";
  if (stations.length === 1 || valve.dispatch === "alternate") return "exact";
  return areEqual(stations) && valve.dispatch === "first-ready" ? "estimate" : "difference";
}

/** Stops, rejects, work shifts, changes, parts that overtake each other, and walks alter the order of service or what counts. */
function changesCourse({ stops, quality, maxInMold, takeaway = [], calendar, changes, walk }: Scenario): boolean {
  const isSteady = ({ rejects, maxAge, places, time }: ServerSpec): boolean =>
    rejects === 0 && maxAge === undefined && (places === 1 || time.kind === "fixed");
  const altering = [stops, quality, maxInMold, calendar, changes, walk];
  return altering.some((part) => part !== undefined) || !takeaway.every(isSteady);
}

/** More stations and packing tables call for an operator than there are operators, so that the order of the calls decides. */
export function sharesCrew(scenario: Scenario): boolean {
  return callers(scenario) > scenario.operators;
}

export interface Elasticity {
  /** Of all time of the step, whichever resource it belongs to. */
  readonly elasticity: Interval | null;
  readonly elasticityMethod: string | null;
}

/** `answersTo` gives the replications in which a step was scaled. */
export function elasticities(
  scenario: Scenario,
  answers: readonly ReplicationAnswer[],
  answersTo: (scale: StepScale) => readonly ReplicationAnswer[],
): (step: StepGroup) => Elasticity {
  const method = elasticityMethod(scenario);
  const wholes = stepGroups(scenario, answers[0]?.criticalShares ?? [], false);
  const targets = targetSteps(scenario, answers);
  return ({ places: [place = -1] }) => {
    const { places, members } = wholes.find((whole) => whole.places.includes(place))!;
    if (method !== "difference") {
      const share = meanInterval(answers.map((answer) => shareAt(places, answer)));
      return { elasticity: { ...share, mean: -share.mean }, elasticityMethod: elasticityMethods[method] };
    }
    const isTarget = targets.some((target) => target.places.includes(place));
    const { shorter, longer } = scalesOf(members);
    const elasticity = isTarget ? finiteDifference(answersTo(shorter), answersTo(longer)) : null;
    return { elasticity, elasticityMethod: elasticity && elasticityMethods.difference };
  };
}

/** The steps to run again, shorter and longer; none where the critical path gives the slope. */
export function elasticityTargets(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly StepScale[] {
  return targetSteps(scenario, answers).flatMap(({ members }) => Object.values(scalesOf(members)));
}

function targetSteps(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly StepGroup[] {
  if (elasticityMethod(scenario) !== "difference") return [];
  return stepGroups(scenario, answers[0]?.criticalShares ?? [], false)
    .map((step) => ({ step, share: mean(answers.map((answer) => shareAt(step.places, answer))) }))
    .filter(({ step, share }) => share >= LEAST_SHARE && step.role !== "stop.stand")
    .toSorted((one, other) => other.share - one.share)
    .slice(0, MOST_STEPS)
    .map(({ step }) => step);
}

function scalesOf(members: StepGroup["members"]): Readonly<Record<keyof typeof SCALE_FACTORS, StepScale>> {
  const { shorter, longer } = SCALE_FACTORS;
  const steps = [...new Map(members.map((member) => [JSON.stringify(member), member])).values()];
  return { shorter: { steps, factor: shorter }, longer: { steps, factor: longer } };
}

function shareAt(places: readonly number[], { criticalShares }: ReplicationAnswer): number {
  return places.reduce((sum, place) => sum + (criticalShares[place]?.share ?? 0), 0);
}

/**
 * Percent of throughput for one percent of step time, by the central difference of seconds a part, pair by pair. Seconds a part,
 * not their inverse, grow in proportion to a critical step. Null where no pair made any parts.
 */
export function finiteDifference(
  shorter: readonly ReplicationAnswer[],
  longer: readonly ReplicationAnswer[],
): Interval | null {
  const slopes = shorter.flatMap((answer, i) => {
    const [less, more] = [partsPerHour(answer), partsPerHour(longer[i])];
    return less > 0 && more > 0 ? [-(less - more) / (less + more) / SCALE_STEP] : [];
  });
  return slopes.length === 0 ? null : meanInterval(slopes);
}

function partsPerHour(answer: ReplicationAnswer | undefined): number {
  const row = answer?.measures.find(({ resource, measure }) => resource === CELL && measure === "good parts per hour");
  return row?.value ?? 0;
}
