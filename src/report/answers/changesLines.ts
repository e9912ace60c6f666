// What one change buys, on the screen: the gains in order, then the changes without a difference in one line.
import { CREW } from "#analysis/ideal/takeawayOwners.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Study } from "#analysis/study/study.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { percent, withInterval } from "#report/words/digits.ts";
import { namesOf } from "#report/words/tradeWords.ts";

type Changes = NonNullable<Study["changes"]>;
type Change = Changes["rows"][number];

const mostRows = 8;

type Found = Pick<Study, "changes" | "scenario" | "replications">;

export function changesLines(study: Found, width: number): readonly string[] {
  const { changes } = study;
  if (changes === undefined || changes.rows.length === 0) return [];
  const seen = changes.rows.filter(({ verdict }) => verdict !== "no difference seen");
  const shown = seen.slice(0, mostRows);
  const hasCosts = shown.some(({ costPerThousand }) => costPerThousand !== null);
  const unit = changes.unit === "good parts per hour" ? "good parts an hour" : changes.unit;
  const heads = ["", "gain", "", ...(hasCosts ? [`${changes.currency} a 1,000`] : []), "then sets the pace"];
  const rows = shown.map((row) => rowOf(row, hasCosts));
  const set = shown.length === 0 ? [] : alignedLines([heads, ...rows], [1, 2, ...(hasCosts ? [3] : [])], width);
  return [
    `What one change buys, in ${unit}:`,
    ...set,
    ...[...pairWords(changes, study), ...restLines(changes, seen)].flatMap((line) => wrappedLines(line, width)),
    "",
  ];
}

function rowOf(row: Change, hasCosts: boolean): readonly string[] {
  const { name, gain, relativeGain, costPerThousand, paceSetter } = row;
  return [
    name,
    signed(gain),
    relativeGain === null ? "" : `${relativeGain < 0 ? "−" : "+"}${percent(Math.abs(relativeGain))}`,
    ...(hasCosts ? [costPerThousand === null ? "" : signed(costPerThousand)] : []),
    paceSetter === null
      ? "none"
      : namesOf(paceSetter.resources, paceSetter.group === CREW ? "operators" : paceSetter.group),
  ];
}

function signed({ mean, halfWidth }: Interval): string {
  const words = withInterval({ mean: Math.abs(mean), halfWidth });
  return `${mean < 0 ? "−" : "+"}${words}`;
}

/** Where the gains come from less than the whole study, or have no intervals. */
function pairWords({ rows, seconds }: Changes, { scenario, replications }: Found): readonly string[] {
  const counts = rows.map(({ gain }) => gain.count);
  const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
  if (most === 1) return ["One pair of replications: the gains have no intervals."];
  if (fewest === replications && seconds === scenario.run.length) return [];
  const pairs = fewest === most ? `${most}` : `${fewest} to ${most}`;
  return [`Gains from ${pairs} pairs of replications of ${formatQuantity(seconds, "time", { digits: 3 })}.`];
}

function notRunWords({ name, atMost }: Changes["notRun"][number]): string {
  return atMost === null ? name : `${name} (at most ${percent(atMost)})`;
}

function restLines({ rows, notRun }: Changes, seen: readonly Change[]): readonly string[] {
  const more = seen.slice(mostRows).map(({ name }) => name);
  const none = rows.filter((row) => !seen.includes(row)).map(({ name }) => name);
  return [
    ...(none.length === 0 ? [] : [`No difference seen: ${none.join(", ")}.`]),
    ...(more.length === 0 ? [] : [`Smaller gains are in changes.csv: ${more.join(", ")}.`]),
    ...(notRun.length === 0 ? [] : [`Not run, use --changes full: ${notRun.map(notRunWords).join(", ")}.`]),
  ];
}
