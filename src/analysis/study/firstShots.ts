// The single shots of a report: a short, typical stretch of the first replication.
import { cycleTimeline } from "#cell/run/cycleTimeline.ts";
import { stopTimeline } from "#cell/run/stopTimeline.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import { settledWarmup } from "#cell/run/settledWarmup.ts";
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { serverOf } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { BottleneckStep } from "#analysis/bottleneck/bottleneck.ts";
import { asWhole } from "#analysis/bottleneck/resourceGroups.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import type { Study } from "./study.ts";

export interface FirstShots {
  /** Undefined where the cell makes too few shots. */
  readonly timeline: TimelineRecord | undefined;
  /** Share that the leading step of the whole run has of the stretch's critical path; null without a leading step. */
  readonly leadingShare: number | null;
  readonly isFromTheStart: boolean;
  /** Around a stop; undefined where the few shots contain one, and where the cell has none that is short enough. */
  readonly stop: TimelineRecord | undefined;
}

/** Where the leading step has less than this part of its share in the whole run, the stretch is not typical. */
const typicalPart = 0.5;
/** Parts of the observed time at which a stretch may begin. */
const places = [0, 1 / 2, 3 / 4];

/**
 * The step of the undisturbed cycle that leads, in the first resource that has one. A stop or a start occurs in few cycles, so a
 * short stretch seldom shows it.
 */
export function leadingInCycle({ bottleneck }: Pick<Study, "bottleneck">): BottleneckStep | undefined {
  return bottleneck.flatMap(({ steps }) => steps).find(({ slackSeconds }) => slackSeconds !== null);
}

/** From the random numbers of the first replication: right after the warm-up, or later where that stretch is not typical. */
export function firstShots(scenario: Scenario, leading?: BottleneckStep): FirstShots {
  const plan = planOf(scenario);
  const warmup = settledWarmup(scenario);
  const shots = typicalShots(plan, warmup, leading);
  const hasStop = shots.timeline?.intervals.some(({ kind }) => kind === "stopped") === true;
  const stop = hasStop ? undefined : stopTimeline(plan, warmup);
  return { ...shots, stop: stop && inOrder(stop) };
}

type Shots = Omit<FirstShots, "stop">;

function typicalShots(plan: CellPlan, warmup: number, leading: BottleneckStep | undefined): Shots {
  const { length } = plan.scenario.run;
  const tried: Shots[] = [];
  for (const place of places) {
    const shots = shotsFrom(warmup + place * (length - warmup), plan, leading);
    if (isTypical(shots, leading)) return { ...shots, isFromTheStart: place === 0 };
    tried.push({ ...shots, isFromTheStart: place === 0 });
  }
  return tried[0]!;
}

export function isTypical({ leadingShare }: Pick<FirstShots, "leadingShare">, leading?: BottleneckStep): boolean {
  return leading === undefined || (leadingShare !== null && leadingShare >= typicalPart * leading.share.mean);
}

function shotsFrom(
  begins: number,
  plan: CellPlan,
  leading: BottleneckStep | undefined,
): Pick<FirstShots, "timeline" | "leadingShare"> {
  const found = cycleTimeline(plan, begins);
  const timeline = found && inOrder(found);
  return { timeline, leadingShare: timeline && leading ? shareOf(leading, timeline, plan.scenario) : null };
}

function inOrder(timeline: TimelineRecord): TimelineRecord {
  return { ...timeline, resources: inReadingOrder(timeline.resources, (resource) => resource) };
}

/** A server's work is in the row of one of its places. */
function shareOf({ step, resources }: BottleneckStep, { chain, seconds }: TimelineRecord, scenario: Scenario): number {
  const own = chain.filter((segment) => {
    const owners = [segment.resource, segment.process, serverOf(segment.resource, scenario) ?? ""];
    return asWhole(segment).step === step && owners.some((owner) => resources.includes(owner));
  });
  return own.reduce((sum, { start, end }) => sum + end - start, 0) / seconds;
}
