// How each resource spends its time, a row each that adds up, with its largest waits.
import { VALVE } from "#cell/words/cycleNames.ts";
import type { StateKind } from "#cell/words/stateNames.ts";
import { resourceGroups } from "#analysis/bottleneck/resourceGroups.ts";
import type { Study } from "#analysis/study/study.ts";
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import { alignedLines } from "#report/words/alignedLines.ts";
import { resourceName } from "#report/words/bottleneckWords.ts";
import { percent, percentsThatAddUp } from "#report/words/digits.ts";

/** A column for each kind of state. */
const kinds: readonly StateKind[] = ["working", "waiting", "stopped", "set-up", "off"];
const headOf = (kind: StateKind): string => (kind === "working" ? "works" : kind === "waiting" ? "waits" : kind);
const mostWaits = 2;
/** Smaller shares are shown as 0.0 %. */
const leastShare = 0.0005;
const nothing = "0.0 %";

/** One row a resource; what counts as one for the bottleneck is one row. The valve is left out. */
export function timeUseLines(study: Pick<Study, "states" | "scenario">, width?: number): readonly string[] {
  const [head = [], ...rows] = timeUseRows(study);
  return alignedLines([head, ...rows], [...head.keys()].slice(1, -1), width);
}

/** The names of the columns, then the rows. */
export function timeUseRows(study: Pick<Study, "states" | "scenario">): readonly (readonly string[])[] {
  const groups = [...resourceGroups(study.scenario)]
    .filter(([group]) => group !== VALVE)
    .map(([group, resources]) => ({
      name: resourceName({ group, resources }).replace(/^the /u, ""),
      states: meanStates(study.states, resources),
    }));
  const percents = groups.map(({ states }) => percentsThatAddUp(kinds.map((kind) => shareOf(states, kind))));
  const shown = [...kinds.keys()].filter((column) => percents.some((row) => row[column] !== nothing));
  const names = shown.map((column) => headOf(kinds[column]!));
  const rows = groups.map(({ name, states }, i) => [
    name,
    ...shown.map((column) => percents[i]![column]!),
    largestWaits(states),
  ]);
  return [["", ...names, "largest waits"], ...rows];
}

type StateShare = Pick<StateSummary, "state" | "kind" | "cause"> & { readonly share: number };

function meanStates(states: readonly StateSummary[], resources: readonly string[]): readonly StateShare[] {
  const own = states.filter(({ resource }) => resources.includes(resource));
  const names = [...new Set(own.map(({ state }) => state))];
  return names.map((state) => {
    const alike = own.filter((each) => each.state === state);
    const share = alike.reduce((sum, each) => sum + each.share.mean, 0) / resources.length;
    return { state, kind: alike[0]!.kind, cause: alike[0]!.cause, share };
  });
}

function shareOf(states: readonly StateShare[], kind: StateKind): number {
  return states.filter((state) => state.kind === kind).reduce((sum, { share }) => sum + share, 0);
}

/** A wait for the set-up of another is a wait as well. */
function largestWaits(states: readonly StateShare[]): string {
  return states
    .filter(({ cause, share }) => cause !== null && share >= leastShare)
    .toSorted((one, other) => other.share - one.share)
    .slice(0, mostWaits)
    .map(({ state, share }) => `${state} ${percent(share)}`)
    .join(", ");
}
