// Each scenario against the base: the paired differences of the cell's measures, in percent of the base, with their intervals.
import { nice } from "d3-array";
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { shownUnit } from "#report/words/shownUnits.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { chart, chartWidth, fittedWords, line, words, type ChartWords } from "./chart.ts";
import { plainNumber, withInterval } from "#report/words/digits.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { lyingWhisker } from "./whisker.ts";
import { straightScale } from "./straightScale.ts";

const gutter = 300;
const remarkWidth = 270;
const top = 30;
const pitch = 30;

interface Change {
  readonly name: string;
  /** In percent of the base. */
  readonly change: number;
  readonly half: number | null;
  readonly remark: string;
}

export function comparisonChart(rows: readonly ComparisonRow[], given: ChartWords, units: UnitSystem): Markup {
  const changes = rows.filter(({ resource }) => resource === CELL).flatMap((compared) => changeOf(compared, units));
  const ends = changes.flatMap(({ change, half }) => [change - (half ?? 0), change + (half ?? 0)]);
  const [low, high] = [Math.min(0, ...ends), Math.max(0, ...ends)];
  const scale = straightScale(nice(low, high > low ? high : low + 1, 6), [gutter, chartWidth - remarkWidth]);
  const bottom = top + changes.length * pitch;
  return chart(
    given,
    bottom + 24,
    ...scale
      .ticks(6)
      .flatMap((tick) => [
        line(scale(tick), top - 8, scale(tick), bottom, tick === 0 ? "base" : "grid"),
        words(`${tick > 0 ? "+" : ""}${tick} %`, scale(tick), top - 12, { anchor: "middle", style: "quiet" }),
      ]),
    ...changes.map((change, i) => row(change, top + i * pitch + 15, scale)),
    words("0 % = the base", scale(0), bottom + 18, { anchor: "middle", style: "quiet" }),
  );
}

/** None where the base is 0: a percentage has no meaning there. */
function changeOf(compared: ComparisonRow, units: UnitSystem): readonly Change[] {
  const { other, measure, unit, difference, simultaneousHalfWidth, ratio, verdict } = compared;
  if (ratio === null || !Number.isFinite(ratio)) return [];
  const change = (ratio - 1) * 100;
  const perUnit = difference === 0 ? 0 : change / difference;
  const half = simultaneousHalfWidth === null ? null : Math.abs(simultaneousHalfWidth * perUnit);
  const sign = difference > 0 ? "+" : "";
  const shown = shownUnit(unit, difference, units);
  const factor = shown.difference(1);
  const value =
    simultaneousHalfWidth === null
      ? plainNumber(difference * factor)
      : withInterval({ mean: difference, halfWidth: simultaneousHalfWidth }, factor);
  const seen = verdict === "no difference seen" ? ", no difference seen" : "";
  return [{ name: `${other}: ${measure}`, change, half, remark: `${sign}${value} ${shown.symbol}${seen}` }];
}

function row({ name, change, half, remark }: Change, y: number, scale: (value: number) => number): Markup {
  const end = scale(Math.max(0, change + (half ?? 0)));
  const ends: readonly [number, number] | null = half ? [scale(change - half), scale(change + half)] : null;
  const bar: Child = line(scale(0), y, scale(change), y, "difference");
  return element(
    "g",
    {},
    element("title", {}, `${name}: ${remark}`),
    words(fittedWords(name, gutter - 12), 0, y + 4, { style: "name" }),
    bar,
    ...lyingWhisker(scale(change), ends, y),
    words(fittedWords(remark, chartWidth - end - 12), end + 12, y + 4),
  );
}
