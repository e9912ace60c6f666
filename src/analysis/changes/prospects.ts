// What each lever may gain at most, from the run of the cell as it is; the most promising ones are run first.
import { CREW } from "#analysis/ideal/takeawayOwners.ts";
import { goodFactor, meanOf, observedHours, type Base } from "./base.ts";
import { idealParts } from "./idealParts.ts";
import type { Lever } from "./levers.ts";

/** A shorter step that may gain less is not run before other levers. */
const leastGain = 0.01;

/**
 * The order in which levers are run: causes of lost parts first, so that all parts have a place, then the steps that set the pace,
 * then the others by their prospects.
 */
export function rankOf({ wish }: Pick<Lever, "wish">, base: Base): number {
  const prospect = prospectOf({ wish }, base);
  if (wish.cause !== undefined) return prospect + 2;
  return prospect + ("steps" in wish.prospect && prospect >= leastGain ? 1 : 0);
}

/** A share of the time. */
function prospectOf({ wish: { prospect } }: Pick<Lever, "wish">, base: Base): number {
  return "unknown" in prospect ? 1 : prospect.share * timeOf(prospect, base);
}

/**
 * The relative gain that shorter steps cannot exceed while the order of service stays: the critical path of the run is a path of the
 * changed cell as well, and only shortened by what it has of these steps. In the time that is saved the cell makes at most the parts
 * of the ideal cycle. Null for changes of another kind.
 */
export function boundOf(lever: Pick<Lever, "wish">, base: Base): number | null {
  if (!("steps" in lever.wish.prospect)) return null;
  const saved = prospectOf(lever, base);
  const made = meanOf(base, "parts per hour") * goodFactor(base.scenario);
  return made === 0 ? null : (saved / (1 - saved)) * Math.max(1, idealParts(base) / made);
}

type Known = Exclude<Lever["wish"]["prospect"], { readonly unknown: true }>;

function timeOf(prospect: Known, base: Base): number {
  if ("stop" in prospect) return stoppedShare(prospect.stop, base);
  if ("isCrew" in prospect) return pathShare(base, ({ group }) => group === CREW);
  if ("resources" in prospect) {
    return pathShare(base, ({ resources }) => resources.some((name) => prospect.resources.includes(name)));
  }
  const { steps, of } = prospect;
  return base.bottleneck
    .flatMap((resource) => resource.steps)
    .filter(
      ({ role, resources }) =>
        steps.some((step) => step === role) && (of ?? resources).some((name) => resources.includes(name)),
    )
    .reduce((sum, { share }) => sum + share.mean, 0);
}

function pathShare({ bottleneck }: Base, isMeant: (resource: Base["bottleneck"][number]) => boolean): number {
  return bottleneck.filter(isMeant).reduce((sum, { share }) => sum + share.mean, 0);
}

/** A stop of one of several stations stops a part of the cell. */
function stoppedShare(stop: string, { scenario, stops }: Base): number {
  const names = scenario.stations.map(({ name }) => name);
  return stops
    .filter((each) => each.stop === stop)
    .map(({ resource, hours }) => hours.mean / (names.includes(resource) ? names.length : 1))
    .reduce((sum, hours) => sum + hours / observedHours(scenario), 0);
}
