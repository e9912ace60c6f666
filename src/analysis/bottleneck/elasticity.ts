// The effect of the time of one step on the throughput, and the method that gives it.
import type { Scenario, ServerSpec } from "#scenario/scenario.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { areEqual } from "#analysis/ideal/orderedShots.ts";
import { callers } from "#analysis/ideal/takeawayOwners.ts";
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import { elasticityMethods } from "./elasticityMethods.ts";
import { isStop, leadingSteps, shareAt, wholeSteps } from "./leadingSteps.ts";
import { FEWEST_REPLICATIONS, rerunsWanted, SETTLED, slopeOf, type Reruns } from "./reruns.ts";
import type { StepGroup } from "./resourceGroups.ts";

/** How a cell gives the slope: from its critical path, or by reruns. */
export type ElasticityMethod = "exact" | "estimate" | "difference";

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
  /** Of all time of the step, whichever resource it belongs to. Null where it was not run again. */
  readonly elasticity: Interval | null;
  /** Where there is no elasticity, the reason. */
  readonly elasticityMethod: string;
}

/** `made` are the replications of the cell as it is. */
export function elasticities(
  scenario: Scenario,
  made: readonly ReplicationAnswer[],
  reruns: Reruns,
): (step: StepGroup) => Elasticity {
  const method = elasticityMethod(scenario);
  const wholes = wholeSteps(scenario, made);
  const leading = leadingSteps(scenario, made);
  return ({ places: [place = -1] }) => {
    const step = wholes.find((whole) => whole.places.includes(place))!;
    if (method !== "difference") {
      const share = meanInterval(made.map((answer) => shareAt(step.places, answer)));
      return { elasticity: { ...share, mean: -share.mean }, elasticityMethod: elasticityMethods[method].name };
    }
    const isLeading = leading.some(({ places }) => places.includes(place));
    const elasticity = isLeading ? slopeOf(step, made, reruns) : null;
    const found = elasticity ? precisionOf(elasticity) : reasonOf(step, isLeading, made.length, reruns);
    return { elasticity, elasticityMethod: elasticityMethods[found].name };
  };
}

function precisionOf({ halfWidth }: Interval): keyof typeof elasticityMethods {
  if (halfWidth === null) return "single";
  return halfWidth <= SETTLED ? "difference" : "wide";
}

function reasonOf(
  step: StepGroup,
  isLeading: boolean,
  replications: number,
  { sensitivity }: Reruns,
): keyof typeof elasticityMethods {
  if (isStop(step)) return "stop";
  if (!isLeading) return "minor";
  if (sensitivity === "off") return "off";
  if (sensitivity === "full") return "noParts";
  return replications < FEWEST_REPLICATIONS ? "short" : "beyond";
}

/** The next replications with a step shorter or longer; none where the critical path gives the slope. */
export function elasticityTasks(
  scenario: Scenario,
  made: readonly ReplicationAnswer[],
  reruns: Reruns,
): readonly ReplicationTask[] {
  if (elasticityMethod(scenario) !== "difference") return [];
  return rerunsWanted(leadingSteps(scenario, made), made, reruns);
}
