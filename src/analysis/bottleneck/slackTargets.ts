// The steps whose slack is tested: cooling, what the screw does, the tasks of operators and servers, and what leads the path.
import type { StepRole } from "#cell/words/stepNames.ts";
import { stepNames } from "#cell/words/stepNames.ts";
import type { StepScale } from "#cell/layers/planCell.ts";
import type { BottleneckResource, BottleneckStep } from "./bottleneck.ts";

export interface SlackTarget extends Pick<BottleneckStep, "step" | "role" | "task" | "resources"> {
  readonly members: StepScale["steps"];
}

const mostTargets = 6;

const asked: readonly StepRole[] = ["mold.cool", "screw.recharge", "screw.extrude", "server.work"];

/** Steps that a longer cycle does not repeat: stops, changes and starts. */
const seldom = /^(?:stop|calendar|change|rest)\.|^screw\.(?:heat|purge)$|clear/iu;

/** Those that everybody asks about come first, then the largest shares of the critical path. */
export function slackTargets(bottleneck: readonly BottleneckResource[]): readonly SlackTarget[] {
  const steps = bottleneck.flatMap((resource) => resource.steps).filter(({ role }) => role && !seldom.test(role));
  const wholes = new Map<string, { readonly target: SlackTarget; share: number }>();
  for (const step of steps) {
    const key = JSON.stringify([step.step, step.resources]);
    const known = wholes.get(key) ?? { target: targetOf(step), share: 0 };
    wholes.set(key, { ...known, share: known.share + step.share.mean });
  }
  const isAsked = ({ role, task }: SlackTarget): boolean =>
    task !== undefined || (role && asked.includes(role)) === true;
  return [...wholes.values()]
    .filter(({ target, share }) => share > 0 || isAsked(target))
    .toSorted((one, other) => Number(isAsked(other.target)) - Number(isAsked(one.target)) || other.share - one.share)
    .slice(0, mostTargets)
    .map(({ target }) => target);
}

function targetOf({ step, role, task, resources }: BottleneckStep): SlackTarget {
  const names = role === "screw.recharge" ? [step, stepNames["screw.fillBeyond"]] : [step];
  const members = resources.flatMap((resource) => names.map((name) => ({ resource, step: name })));
  return { step, ...(role ? { role } : {}), ...(task ? { task } : {}), resources, members };
}
