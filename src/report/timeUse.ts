// Shows in a few lines how screw, stations and crew spend their time, and what they wait for.
import type { Study } from "#analysis/study.ts";
import type { StateSummary } from "#analysis/summarizeStates.ts";
import { alignedLines } from "./alignedLines.ts";
import { percent } from "./digits.ts";
import { ownerName } from "./tradeWords.ts";

/** One line a resource; the valve is left out, since nobody waits for its sake alone. */
export function timeUseLines({ states }: Pick<Study, "states">): readonly string[] {
  const resources = [...new Set(states.map(({ resource }) => resource))].filter((name) => name !== "valve");
  const rows = resources.map((resource) =>
    timeUseRow(
      resource,
      states.filter((state) => state.resource === resource),
    ),
  );
  return alignedLines([["", "works", "waits", "of that"], ...rows], [1, 2]);
}

function timeUseRow(resource: string, states: readonly StateSummary[]): readonly string[] {
  const sum = (kind: string): number =>
    states.filter((state) => state.kind === kind).reduce((total, { share }) => total + share.mean, 0);
  const waits = states
    .filter(({ kind, share }) => kind === "waiting" && share.mean > 0)
    .toSorted((one, other) => other.share.mean - one.share.mean)
    .map(({ state, share }) => `${state} ${percent(share.mean)}`);
  return [ownerName(resource), percent(sum("working")), percent(sum("waiting")), waits.join(", ")];
}
