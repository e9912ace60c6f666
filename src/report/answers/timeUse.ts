// How each resource spends its time, a row each that adds up, with its largest waits.
import { VALVE } from "#cell/words/cycleNames.ts";
import type { StateKind } from "#cell/words/stateNames.ts";
import { areEqual } from "#analysis/ideal/orderedShots.ts";
import { resourceKind } from "#analysis/ideal/planOf.ts";
import type { Study } from "#analysis/study/study.ts";
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import { serverOf } from "#scenario/resolving/takeawayGroups.ts";
import { alignedLines } from "#report/words/alignedLines.ts";
import { percent, percentsThatAddUp } from "#report/words/digits.ts";
import { namesOf, ownerName } from "#report/words/tradeWords.ts";

const kinds: readonly StateKind[] = ["working", "waiting", "stopped", "off"];
const mostWaits = 2;
/** Smaller shares are shown as 0.0 %. */
const leastShare = 0.0005;

/** One row a resource; identical stations, their masks and the places of a server are one row. The valve is left out. */
export function timeUseLines(study: Pick<Study, "states" | "scenario">, width?: number): readonly string[] {
  const groups = [...groupsOf(study)].map(([name, resources]) => ({
    name,
    states: meanStates(study.states, resources),
  }));
  const shown = kinds.filter((kind) => groups.some(({ states }) => shareOf(states, kind) >= leastShare));
  const rows = groups.map(({ name, states }) => [
    name,
    ...percentsThatAddUp(shown.map((kind) => shareOf(states, kind))),
    largestWaits(states),
  ]);
  const numbers = shown.map((_, i) => i + 1);
  return alignedLines([["", ...shown, "largest waits"], ...rows], numbers, width);
}

function groupsOf({ states, scenario }: Pick<Study, "states" | "scenario">): ReadonlyMap<string, readonly string[]> {
  const resources = [...new Set(states.map(({ resource }) => resource))].filter((resource) => resource !== VALVE);
  const groups = new Map<string, string[]>();
  for (const resource of resources) {
    const key = groupOf(resource, scenario);
    groups.set(key, [...(groups.get(key) ?? []), resource]);
  }
  return new Map([...groups.values()].map((alike) => [groupName(alike, scenario), alike]));
}

function groupOf(resource: string, scenario: Study["scenario"]): string {
  const kind = areEqual(scenario.stations) ? resourceKind(resource, scenario) : undefined;
  if (kind === "station") return "stations";
  if (kind === "mask") return "masks";
  return serverOf(resource, scenario) ?? resource;
}

function groupName(resources: readonly string[], scenario: Study["scenario"]): string {
  const [first = ""] = resources;
  if (resources.length === 1) return ownerName(first).replace(/^the /u, "");
  const server = serverOf(first, scenario);
  if (server !== undefined) return `${server}, ${resources.length} places`;
  return resourceKind(first, scenario) === "mask" ? `${resources.length} masks` : namesOf(resources);
}

type StateShare = Pick<StateSummary, "state" | "kind"> & { readonly share: number };

function meanStates(states: readonly StateSummary[], resources: readonly string[]): readonly StateShare[] {
  const own = states.filter(({ resource }) => resources.includes(resource));
  const names = [...new Set(own.map(({ state }) => state))];
  return names.map((state) => {
    const alike = own.filter((each) => each.state === state);
    const share = alike.reduce((sum, each) => sum + each.share.mean, 0) / resources.length;
    return { state, kind: alike[0]!.kind, share };
  });
}

function shareOf(states: readonly StateShare[], kind: StateKind): number {
  return states.filter((state) => state.kind === kind).reduce((sum, { share }) => sum + share, 0);
}

function largestWaits(states: readonly StateShare[]): string {
  return states
    .filter(({ kind, share }) => kind === "waiting" && share >= leastShare)
    .toSorted((one, other) => other.share - one.share)
    .slice(0, mostWaits)
    .map(({ state, share }) => `${state} ${percent(share)}`)
    .join(", ");
}
