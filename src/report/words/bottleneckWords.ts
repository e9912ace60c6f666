// Phrases for what sets the pace of a cell and for the next resource in line.
import { mean } from "simple-statistics";
import { hasSlack } from "#analysis/ideal/idealCircuit.ts";
import { CREW } from "#analysis/ideal/takeawayOwners.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import type { Study } from "#analysis/study/study.ts";
import { percent, seconds, withInterval } from "./digits.ts";
import { matchedSlackWords } from "./extrusionWords.ts";
import { namesOf, nounOf, ownerName, stepOf } from "./tradeWords.ts";

type Resource = Study["bottleneck"][number];
type Step = Resource["steps"][number];

const leastShare = 0.005;
const mostSteps = 3;

/** "operator 1 (100 % busy): packing 36 %, removal 34 %, walking 30 % of the critical path". */
export function bottleneckWords({ bottleneck, states }: Pick<Study, "bottleneck" | "states">): string {
  const first = paceSetter({ bottleneck });
  if (!first) return "no shot was made";
  const name = resourceName(first);
  const steps = sharesByNoun(first).filter(({ share }) => share >= leastShare);
  const shares =
    steps.length === 1 && steps[0]!.noun === name
      ? [`${withInterval(first.share, 100)} %`]
      : steps.slice(0, mostSteps).map(({ noun, share }) => `${noun} ${percent(share)}`);
  return `${name} (${busyWords(first, states)}): ${shares.join(", ")} of the critical path${tiedWords({ bottleneck })}`;
}

/** The resource that sets the pace; undefined where no shot was made. */
export function paceSetter({ bottleneck }: Pick<Study, "bottleneck">): Resource | undefined {
  return bottleneck.find(({ share }, i) => i === 0 && share.mean > 0);
}

/** "100 % busy", and with a calendar "91 % busy on shift": nights would make every resource look idle. */
export function busyWords(resource: Pick<Resource, "utilization" | "resources">, states: Study["states"]): string {
  const share = busyShare(resource, states);
  return `${percent(share)} busy${share === resource.utilization ? "" : " on shift"}`;
}

/** Share of the time on shift in which it works. */
export function busyShare(
  { utilization, resources }: Pick<Resource, "utilization" | "resources">,
  states: Study["states"],
): number {
  return utilization / mean(resources.map((resource) => onShift(states, resource)));
}

/** Share of all time in which the resource is not off. */
export function onShift(states: Study["states"], resource: string): number {
  const off = states.filter((state) => state.resource === resource && state.kind === "off");
  return Math.max(1 - off.reduce((sum, { share }) => sum + share.mean, 0), Number.EPSILON);
}

/** ", tied with the screw" where the intervals overlap, else nothing. */
export function tiedWords({ bottleneck }: Pick<Study, "bottleneck">): string {
  const tied = bottleneck.filter(({ isTied }) => isTied).map(resourceName);
  return tied.length === 0 ? "" : `, tied with ${tied.join(" and ")}`;
}

/** "left and right", "all 4 operators". */
export function resourceName({ group, resources }: Pick<Resource, "group" | "resources">): string {
  return namesOf(resources, group === CREW ? "operators" : group);
}

/** All walks are one, wherever they lead. */
export function sharesByNoun({ steps }: Resource): readonly { readonly noun: string; readonly share: number }[] {
  const shares = new Map<string, number>();
  for (const step of steps) {
    const noun = step.role === "crew.walk" ? stateNames.walking : nounOf(step);
    shares.set(noun, (shares.get(noun) ?? 0) + step.share.mean);
  }
  return [...shares].map(([noun, share]) => ({ noun, share })).toSorted((one, other) => other.share - one.share);
}

/** "cooling, left and right". */
export function stepName(step: Step): string {
  return stepOf(step, step.resources);
}

/** A matched screw is half a tick faster than its molds. */
const leastSlack = 1e-5;

/** "the screw, slack 0.94 s a shot"; without a slack where no order is fixed. */
export function runnerUpWords({
  runnerUp,
  bottleneck,
  scenario,
  ideal,
}: Pick<Study, "runnerUp" | "bottleneck" | "scenario" | "ideal">): string {
  if (!runnerUp) return "no other resource";
  const operators = bottleneck.find(({ group }) => group === CREW && group === runnerUp.name);
  const name = operators ? resourceName(operators) : ownerName(runnerUp.name);
  const matched = runnerUp.name === PLASTICATOR ? matchedSlackWords(scenario, ideal) : undefined;
  if (matched !== undefined) return `${name}, ${matched}`;
  if (!hasSlack(ideal)) return name;
  const { slackPerShot } = runnerUp;
  if (slackPerShot < leastSlack) return `${name}, no slack`;
  return `${name}, slack ${seconds(slackPerShot)} a shot`;
}

/** Where no order is fixed and slack was not tested: how to test it. */
export function noSlackWords({ ideal, runnerUp, slack }: Pick<Study, "ideal" | "runnerUp" | "slack">): string {
  return hasSlack(ideal) || runnerUp === null || slack !== undefined ? "" : "; no order is fixed: --slack tests slack";
}
