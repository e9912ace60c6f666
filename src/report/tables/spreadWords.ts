// How hang, sag and time at heat spread over the shots of a run, as rows of the process window and as warnings.
import type { ShotSpread } from "#analysis/study/shotSpread.ts";
import { percent } from "#report/words/digits.ts";
import { shown } from "#report/words/shownValue.ts";
import type { Cell } from "./table.ts";

/** Quantity, value, unit, limits, verdict, remedy and source: mean, 5 %, half, 95 % and the most of all shots. */
export function spreadCells(spread: ShotSpread): readonly (readonly Cell[])[] {
  const { quantity, unit, quantiles, limit, source } = spread;
  const told: readonly (readonly [string, number])[] = [
    ["mean", spread.mean],
    ["p05", quantiles.p05],
    ["p50", quantiles.p50],
    ["p95", quantiles.p95],
    ["max", spread.max],
  ];
  return told.map(([word, value]) => {
    const isAbove = limit !== null && value > limit;
    const verdict = limit === null ? "no limit" : isAbove ? "above" : "inside";
    return [`${quantity} of the run, ${word}`, value, unit, null, limit, verdict, isAbove ? spread.remedy : "", source];
  });
}

/** A line for each quantity that some shots take beyond its limit, the stations together that take it there. */
export function spreadWarnings(spreads: readonly ShotSpread[]): readonly string[] {
  const beyond = spreads.filter((spread) => spread.beyond > 0);
  return [...new Set(beyond.map(({ quantity }) => quantity))].map((quantity) => {
    const own = beyond.filter((spread) => spread.quantity === quantity);
    const worst = own.reduce((one, other) => (other.beyond > one.beyond ? other : one));
    const { unit, limit, quantiles, max, remedy } = worst;
    const stations = own.map(({ station }) => station).join(" and ");
    const most = `${shown(quantiles.p95, unit)} in one of twenty, at most ${shown(max, unit)}`;
    const share = `above ${shown(limit ?? 0, unit)} in ${shareWords(worst.beyond)} of the shots`;
    return `${quantity} from shot to shot, ${stations}: ${share}, ${most}. ${remedy}`;
  });
}

function shareWords(share: number): string {
  return share === 1 ? "all" : share < 0.0005 ? "less than 0.1 %" : percent(share);
}

/** For the answer of a run: how the shots of all stations lay, a line each; nothing where no material is named. */
export function spreadLines(spreads: readonly ShotSpread[]): readonly (readonly string[])[] {
  if (spreads.length === 0) return [];
  const words = [...new Set(spreads.map(({ quantity }) => quantity))].map((quantity) => {
    const own = spreads.filter((spread) => spread.quantity === quantity);
    const most = (of: (spread: ShotSpread) => number): number =>
      own.reduce((largest, spread) => Math.max(largest, of(spread)), 0);
    const half = own.reduce((sum, { quantiles }) => sum + quantiles.p50, 0) / own.length;
    const { unit } = own[0]!;
    // A night at heat would drag a mean beyond nearly all that were shot.
    const [p95, max] = [most(({ quantiles }) => quantiles.p95), most((spread) => spread.max)].map((each) =>
      shown(each, unit),
    );
    return `${quantity} ${shown(half, unit)} (median; p95 ${p95}, most ${max})`;
  });
  return [["Shots spread", words.join(", ")]];
}
