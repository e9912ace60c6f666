// Shows in a few lines how screw, stations and crew spend their time, and what they wait for.
import { VALVE } from "#cell/words/cycleNames.ts";
import { serverOf } from "#scenario/resolving/takeawayGroups.ts";
import type { Study } from "#analysis/study/study.ts";
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import { alignedLines } from "#report/words/alignedLines.ts";
import { percent } from "#report/words/digits.ts";
import { ownerName } from "#report/words/tradeWords.ts";

/** One line a resource; the valve is left out, since nothing waits for it alone, and the places of a server are one. */
export function timeUseLines(
  { states, scenario }: Pick<Study, "states" | "scenario">,
  width?: number,
): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { resource } of states) {
    const name = serverOf(resource, scenario) ?? resource;
    const known = groups.get(name) ?? [];
    if (!known.includes(resource)) known.push(resource);
    groups.set(name, known);
  }
  groups.delete(VALVE);
  const rows = [...groups].map(([name, places]) =>
    timeUseRow(places.length > 1 ? `${name}, ${places.length} places` : name, meanStates(states, places)),
  );
  return alignedLines([["", "works", "waits", "of that"], ...rows], [1, 2], width);
}

type StateShare = Pick<StateSummary, "state" | "kind" | "share">;

/** The shares of a resource, or the mean of several that are alike. */
function meanStates(states: readonly StateSummary[], places: readonly string[]): readonly StateShare[] {
  const own = states.filter(({ resource }) => places.includes(resource));
  const names = [...new Set(own.map(({ state }) => state))];
  return names.map((name) => {
    const alike = own.filter(({ state }) => state === name);
    const mean = alike.reduce((sum, { share }) => sum + share.mean, 0) / places.length;
    return { ...alike[0]!, share: { ...alike[0]!.share, mean } };
  });
}

function timeUseRow(resource: string, states: readonly StateShare[]): readonly string[] {
  const all = (kind: StateShare["kind"]): number =>
    states.filter((state) => state.kind === kind).reduce((total, { share }) => total + share.mean, 0);
  // Who is off shift neither works nor waits.
  const on = Math.max(1 - all("off"), Number.EPSILON);
  const sum = (kind: StateShare["kind"]): number => all(kind) / on;
  const waits = states
    .filter(({ kind, share }) => kind === "waiting" && share.mean > 0)
    .toSorted((one, other) => other.share.mean - one.share.mean)
    .map(({ state, share }) => `${state} ${percent(share.mean / on)}`);
  return [ownerName(resource), percent(sum("working")), percent(sum("waiting")), waits.join(", ")];
}
