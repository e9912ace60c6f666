// Which resources count as one where the bottleneck is named: identical stations, their masks, operators, the places of a server.
import { areEqual } from "#analysis/ideal/orderedShots.ts";
import { CREW } from "#analysis/ideal/takeawayOwners.ts";
import { planOf, resourceKind } from "#analysis/ideal/planOf.ts";
import type { CriticalShare } from "#analysis/replication/replicationAnswer.ts";
import { RAM } from "#cell/words/cycleNames.ts";
import { stepNames } from "#cell/words/stepNames.ts";
import { serverOf } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";

export type ReportedStep = Pick<CriticalShare, "step" | "role" | "task">;

export const STATIONS = "stations";
export const MASKS = "masks";
/** Of the heads of identical stations; a common accumulator has one ram. */
const RAMS = "rams";

/** The name of the group of a resource; its own where it stands alone. */
function groupOf(resource: string, scenario: Scenario): string {
  const kind = resourceKind(resource, scenario);
  if (kind === "operator") return CREW;
  if (areEqual(scenario.stations)) {
    if (kind === "station") return STATIONS;
    if (kind === "mask") return MASKS;
    if (kind === "ram" && resource !== RAM) return RAMS;
  }
  return serverOf(resource, scenario) ?? resource;
}

/** All resources of the cell by group, a server under its own name. */
export function resourceGroups(scenario: Scenario): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, Set<string>>();
  for (const { name, kind } of planOf(scenario).resources) {
    if (kind === "shift") continue;
    const group = groupOf(name, scenario);
    groups.set(group, (groups.get(group) ?? new Set()).add(serverOf(name, scenario) ?? name));
  }
  return new Map([...groups].map(([group, names]) => [group, [...names]]));
}

/** A recharge of a common accumulator has two parts, which count as one. */
export function asWhole<Step extends ReportedStep>(step: Step): Step {
  if (step.role !== "screw.fillBeyond") return step;
  return { ...step, role: "screw.recharge", step: stepNames["screw.recharge"] };
}

/** The same step of all resources of a group. */
export interface StepGroup extends ReportedStep {
  readonly group: string;
  readonly members: readonly Pick<CriticalShare, "resource" | "step">[];
  /** Places among the critical shares. */
  readonly places: readonly number[];
}

/** Steps in the order of the shares; with `byOwner` a step is several, one for each owner of its time. */
export function stepGroups(
  scenario: Scenario,
  shares: readonly CriticalShare[],
  byOwner: boolean,
): readonly StepGroup[] {
  const groups = new Map<string, StepGroup>();
  shares.forEach((share, place) => {
    const { step, role, task } = asWhole(share);
    const group = groupOf(share.resource, scenario);
    const owner = groupOf(share.owner, scenario);
    const key = JSON.stringify([group, step, byOwner ? owner : null]);
    const known = groups.get(key);
    groups.set(key, {
      step,
      ...(role ? { role } : {}),
      ...(task ? { task } : {}),
      group: byOwner ? owner : group,
      members: [...(known?.members ?? []), { resource: share.resource, step: share.step }],
      places: [...(known?.places ?? []), place],
    });
  });
  return [...groups.values()];
}
