// How hang, sag, time at heat and demold temperature spread over the shots of a run, as rows of the process window and as warnings.
import { mean } from "simple-statistics";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { ShotSpread } from "#analysis/study/shotSpread.ts";
import { percent } from "#report/words/digits.ts";
import { shown } from "#report/words/shownValue.ts";
import { finiteCell, type Cell } from "./table.ts";

/** Quantity, value, unit, limits, verdict, remedy and source: mean, 5 %, half, 95 % and the most of all shots. */
export function spreadCells(spread: ShotSpread): readonly (readonly Cell[])[] {
  const { quantity, unit, quantiles, limit, source } = spread;
  const rows: readonly (readonly [string, number])[] = [
    ["mean", spread.mean],
    ["p05", quantiles.p05],
    ["p50", quantiles.p50],
    ["p95", quantiles.p95],
    ["max", spread.max],
  ];
  return rows.map(([word, value]) => {
    const isAbove = limit !== null && value > limit;
    const verdict = limit === null ? "no limit" : isAbove ? "above" : "inside";
    return [
      `${quantity} of the run, ${word}`,
      finiteCell(value),
      unit,
      null,
      limit,
      verdict,
      isAbove ? spread.remedy : "",
      source,
    ];
  });
}

/** A line for each quantity that some shots take beyond its limit, the stations together that take it there. */
export function spreadWarnings(spreads: readonly ShotSpread[], units: UnitSystem = "si"): readonly string[] {
  const beyond = spreads.filter((spread) => spread.beyond > 0);
  return [...new Set(beyond.map(({ quantity }) => quantity))].map((quantity) => {
    const own = beyond.filter((spread) => spread.quantity === quantity);
    const worst = own.reduce((one, other) => (other.beyond > one.beyond ? other : one));
    const { unit, limit, quantiles, max, remedy } = worst;
    const stations = own.map(({ station }) => station).join(" and ");
    const most = spreadWords(quantiles.p95, max, (value) => shown(value, unit, units));
    const share = `above ${shown(limit ?? 0, unit, units)} in ${shareWords(worst.beyond)} of the shots`;
    return `${quantity}, ${stations}: ${share}; ${most}. ${remedy}`;
  });
}

function spreadWords(p95: number, largest: number, words: (value: number) => string): string {
  if (!Number.isFinite(p95)) return "more than 5 % of the shots without end";
  return `95 % of the shots within ${words(p95)}, largest ${words(largest)}`;
}

function shareWords(share: number): string {
  return share === 1 ? "all" : share < 0.0005 ? "less than 0.1 %" : percent(share);
}

/** For the answer of a run: hang, sag, time at heat and demold temperature of the shots of all stations; none where no material is named. */
export function spreadLines(spreads: readonly ShotSpread[], units: UnitSystem): readonly (readonly string[])[] {
  return [...new Set(spreads.map(({ quantity }) => quantity))].map((quantity) => {
    const own = spreads.filter((spread) => spread.quantity === quantity);
    const most = (of: (spread: ShotSpread) => number): number =>
      own.reduce((largest, spread) => Math.max(largest, of(spread)), 0);
    const { unit } = own[0]!;
    const median = shown(mean(own.map(({ quantiles }) => quantiles.p50)), unit, units);
    const [p95, largest] = [most(({ quantiles }) => quantiles.p95), most(({ max }) => max)];
    const words = spreadWords(p95, largest, (value) => shown(value, unit, units));
    const name = `${quantity.charAt(0).toUpperCase()}${quantity.slice(1)}`;
    if (median === shown(largest, unit, units)) return [name, `${median} in every shot`];
    return [name, `median ${median}, ${words}`];
  });
}
