// Signs by which a chart shows what is different in a cell: the mean duration of a state, in two runs side by side.
import { stateNames } from "#cell/words/stateNames.ts";
import { seconds } from "#report/words/digits.ts";
import type { Choice } from "#report/lessons/exercise.ts";
import { findSpells } from "#report/lessons/findSpells.ts";
import type { SpellPattern } from "#report/lessons/lesson.ts";
import type { CellRun } from "#report/lessons/spells.ts";

/** What may be different in a cell. */
export interface Difference {
  readonly text: string;
  readonly set: readonly string[];
  /** The state whose duration shows it. */
  readonly sign: Omit<SpellPattern, "cell">;
  readonly signName: string;
}

/** The recharges, the coolings and so on, in the words of the chart. */
export const signs = {
  shift: { sign: { of: "valve", state: stateNames.shifting }, signName: "A shift of the valve" },
  cooling: { sign: { of: "station", state: stateNames.cooling }, signName: "The cooling" },
  operator: { sign: { of: "station", state: stateNames.noOperatorFree }, signName: "A wait for an operator" },
  recharge: { sign: { of: "screw", state: stateNames.recharging }, signName: "The recharge" },
  closing: { sign: { of: "station", state: stateNames.closing }, signName: "The closing" },
  removal: { sign: { of: "station", state: stateNames.removal }, signName: "The removal" },
} as const satisfies Readonly<Record<string, Pick<Difference, "sign" | "signName">>>;

/** What the chart of a run shows whole. */
export interface Stretch {
  readonly from: number;
  readonly until: number;
}

/** Seconds; 0 where there is none. */
function meanOf(sign: Difference["sign"], run: CellRun, { from, until }: Stretch): number {
  const durations = findSpells({ cell: "", ...sign }, run).flatMap(({ start, end }) =>
    end === null || start < from || end > until ? [] : [end - start],
  );
  return durations.length === 0 ? 0 : durations.reduce((sum, each) => sum + each, 0) / durations.length;
}

/** Share of the larger duration by which a sign shows, and by which it does not. */
const [shows, hides] = [0.2, 0.1];

/** One choice a difference, right by its sign; undefined where the signs do not show exactly the one. */
export function choicesBySigns(
  differences: readonly Difference[],
  made: Difference,
  [usual, changed]: readonly [CellRun, CellRun],
  stretch: Stretch,
): readonly Choice[] | undefined {
  const found = differences.map((difference) => {
    const [before, after] = [usual, changed].map((run) => meanOf(difference.sign, run, stretch)) as [number, number];
    return { difference, before, after, change: Math.abs(after - before) / Math.max(after, before, 1e-9) };
  });
  const isClear = found.every(({ difference, change }) => (difference === made ? change > shows : change < hides));
  if (!isClear) return undefined;
  return found.map(({ difference, before, after }) => ({
    text: difference.text,
    isRight: difference === made,
    because: because(difference, before, after),
  }));
}

function because({ signName }: Difference, before: number, after: number): string {
  if (before === 0 && after === 0) return `${signName} comes in neither chart.`;
  if (before === 0) return `${signName} takes ${seconds(after)} in the second chart. The first one has none.`;
  const [first, second] = [seconds(before), seconds(after)];
  return first === second
    ? `${signName} takes ${first} on average in both charts.`
    : `${signName} takes ${second} on average in the second chart, and ${first} in the first one.`;
}
