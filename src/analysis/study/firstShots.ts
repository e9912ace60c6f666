// What a report shows of single shots: a short stretch of the first replication that is typical of the run.
import { cycleTimeline } from "#cell/run/cycleTimeline.ts";
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
  /** Share of the stretch's binding path that the step has which leads in the whole run; null where none leads. */
  readonly leadingShare: number | null;
  readonly isFromTheStart: boolean;
}

/** Less than this part of its share in the whole run, and the stretch tells another story than the run. */
const typicalPart = 0.5;
/** Parts of the observed time at which a typical stretch is looked for. */
const places = [0, 1 / 2, 3 / 4];

/** The step that leads among those of the undisturbed cycle, the resource that sets the pace first: a stop or a start that leads is seen in few cycles, and looked for in vain. */
export function leadingInCycle({ bottleneck }: Pick<Study, "bottleneck">): BottleneckStep | undefined {
  return bottleneck.flatMap(({ steps }) => steps).find(({ slackSeconds }) => slackSeconds !== null);
}

/** With the random numbers of the study's first replication: right after the start-up, or later where that is not typical; at worst the first. */
export function firstShots(scenario: Scenario, leading?: BottleneckStep): FirstShots {
  const warmup = settledWarmup(scenario);
  const tried: FirstShots[] = [];
  for (const place of places) {
    const shots = shotsFrom(warmup + place * (scenario.run.length - warmup), scenario, leading);
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
  scenario: Scenario,
  leading: BottleneckStep | undefined,
): Pick<FirstShots, "timeline" | "leadingShare"> {
  const found = cycleTimeline(planOf(scenario), begins);
  const timeline = found && { ...found, resources: inReadingOrder(found.resources, (resource) => resource) };
  return { timeline, leadingShare: timeline && leading ? shareOf(leading, timeline, scenario) : null };
}

/** A server's work stands in the row of one of its places. */
function shareOf({ step, resources }: BottleneckStep, { chain, seconds }: TimelineRecord, scenario: Scenario): number {
  const own = chain.filter((segment) => {
    const owners = [segment.resource, segment.process, serverOf(segment.resource, scenario) ?? ""];
    return asWhole(segment).step === step && owners.some((owner) => resources.includes(owner));
  });
  return own.reduce((sum, { start, end }) => sum + end - start, 0) / seconds;
}
