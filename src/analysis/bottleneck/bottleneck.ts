// Where the bottleneck sits: each resource's share of the critical path and its steps, beside utilization, slack and elasticity.
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { naturalOrder } from "#foundation/naturalOrder.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { elasticities, type Elasticity } from "./elasticity.ts";
import { resourceGroups, stepGroups, type StepGroup, type ReportedStep } from "./resourceGroups.ts";
import type { Reruns } from "./reruns.ts";
import { slackOfGroup } from "./runnerUp.ts";

/** A step, or that part of its time which belongs to one resource. */
export interface BottleneckStep extends ReportedStep, Elasticity {
  /** Whose step it is; several where identical resources share it. */
  readonly resources: readonly string[];
  /** Share of the critical path. */
  readonly share: Interval;
  /** The part of the share whose start was bound by more than one completion. */
  readonly tiedShare: number;
  /** Least slack of the circuits through the step, in their own seconds; null where it is on none. */
  readonly slackSeconds: number | null;
}

/** A resource, or several identical ones. */
export interface BottleneckResource {
  readonly group: string;
  readonly resources: readonly string[];
  /** Share of the critical path that belongs to it; those of all resources add up to 1. */
  readonly share: Interval;
  /** The intervals of this share and of the largest one overlap. */
  readonly isTied: boolean;
  readonly tiedShare: number;
  /** Working time over observed time, mean of identical resources; and the same for the states that count as active. */
  readonly utilization: number;
  readonly activeShare: number;
  /** Shares of the observed time in which the active period was the longest: in all, and while no other resource shared it. */
  readonly longestActiveShare: number;
  readonly longestActiveAlone: number;
  /** Seconds a shot by which its circuit may grow before it sets the ideal cycle; null where it has no circuit of its own or no order is fixed. */
  readonly slackPerShot: number | null;
  /** The largest share comes first. */
  readonly steps: readonly BottleneckStep[];
}

/** The largest share comes first. */
export function bottleneckResources(
  scenario: Scenario,
  answers: readonly ReplicationAnswer[],
  reruns: Reruns,
  ideal: IdealCycle,
): readonly BottleneckResource[] {
  const elasticityOf = elasticities(scenario, answers, reruns);
  const steps = stepGroups(scenario, answers[0]?.criticalShares ?? [], true);
  const isOnPath = (places: readonly number[]): boolean => sharesAt(places, answers).share.mean > 0;
  // A step that is never on the path stands beneath its own resource.
  const whole = stepGroups(scenario, answers[0]?.criticalShares ?? [], false);
  const isShown = ({ group, places }: StepGroup): boolean => {
    const own = whole.find((each) => each.places.includes(places[0]!))!;
    return isOnPath(places) || (own.group === group && !isOnPath(own.places));
  };
  const found = [...resourceGroups(scenario)].map(([group, resources]) => {
    const own = steps.filter((step) => step.group === group && isShown(step));
    const places = own.flatMap((step) => step.places);
    return {
      group,
      resources: inReadingOrder(resources, (name) => name),
      ...sharesAt(places, answers),
      ...activity(resources, answers),
      slackPerShot: slackOfGroup(group, scenario, ideal),
      steps: own
        .map((step) => ({ ...stepRow(step, answers, ideal), ...elasticityOf(step) }))
        .toSorted((one, other) => other.share.mean - one.share.mean || naturalOrder(one.step, other.step)),
    };
  });
  const ranked = found.toSorted(
    (one, other) => other.share.mean - one.share.mean || naturalOrder(one.resources[0]!, other.resources[0]!),
  );
  return ranked.map((each, i) => ({ ...each, isTied: i > 0 && overlap(ranked[0]!.share, each.share) }));
}

/** Overlap of the 95 % intervals; a share of 0 is tied with nothing. */
function overlap(largest: Interval, other: Interval): boolean {
  return other.mean > 0 && other.mean + (other.halfWidth ?? 0) >= largest.mean - (largest.halfWidth ?? 0);
}

function stepRow(
  { step, role, task, members, places }: StepGroup,
  answers: readonly ReplicationAnswer[],
  ideal: IdealCycle,
): Omit<BottleneckStep, keyof Elasticity> {
  const slacks = members.flatMap((member) => ideal.slackOf(member.resource, member.step) ?? []);
  const resources = new Set(members.map(({ resource }) => resource));
  return {
    step,
    ...(role ? { role } : {}),
    ...(task ? { task } : {}),
    resources: inReadingOrder([...resources], (name) => name),
    ...sharesAt(places, answers),
    slackSeconds: slacks.length === 0 ? null : slacks.reduce((least, each) => Math.min(least, each)),
  };
}

function sharesAt(
  places: readonly number[],
  answers: readonly ReplicationAnswer[],
): Pick<BottleneckStep, "share" | "tiedShare"> {
  const sumOf = ({ criticalShares }: ReplicationAnswer, part: "share" | "tied"): number =>
    places.reduce((sum, place) => sum + (criticalShares[place]?.[part] ?? 0), 0);
  return {
    share: meanInterval(answers.map((answer) => sumOf(answer, "share"))),
    tiedShare: meanInterval(answers.map((answer) => sumOf(answer, "tied"))).mean,
  };
}

type Activity = Pick<BottleneckResource, "utilization" | "activeShare" | "longestActiveShare" | "longestActiveAlone">;

function activity(resources: readonly string[], answers: readonly ReplicationAnswer[]): Activity {
  const timeIn = (counts: (time: ReplicationAnswer["stateShares"][number]) => boolean): number => {
    const sums = answers.map(({ stateShares }) =>
      stateShares
        .filter((time) => resources.includes(time.resource) && counts(time))
        .reduce((sum, { share }) => sum + share, 0),
    );
    return meanInterval(sums).mean / resources.length;
  };
  const longest = answers.map(({ longestActive }) =>
    longestActive.filter(({ resource }) => resources.includes(resource)),
  );
  const longestOf = (timeOf: (active: ReplicationAnswer["longestActive"][number]) => number): number =>
    meanInterval(longest.map((rows) => rows.reduce((sum, row) => sum + timeOf(row), 0))).mean;
  return {
    utilization: timeIn(({ kind }) => kind === "working"),
    activeShare: timeIn(({ isActive }) => isActive),
    longestActiveShare: longestOf(({ sole, shifting }) => sole + shifting),
    longestActiveAlone: longestOf(({ sole }) => sole),
  };
}
