// Bars of one measure under each other, named on the left, with intervals and a remark on the right.
import { scaleLinear } from "d3-scale";
import { chart, chartWidth, fittedWords, line, widthOfWords, words, type ChartWords } from "./chart.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { filledBox } from "./patterns.ts";
import type { Fill } from "#report/words/stateLook.ts";
import { lyingWhisker } from "./whisker.ts";

export interface RankedBar {
  readonly name: string;
  readonly fill: Fill;
  readonly value: number;
  readonly halfWidth: number | null;
  /** The value in words, beside the bar. */
  readonly remark: string;
}

export interface RankedAxis {
  readonly label: string;
  readonly tick: (value: number) => string;
  /** A value to compare all bars with. */
  readonly mark?: { readonly value: number; readonly label: string };
}

const gutter = 300;
const remarkWidth = 270;
const top = 30;
const pitch = 30;
const height = 18;

export function rankedBars(bars: readonly RankedBar[], axis: RankedAxis, given: ChartWords): Markup {
  const most = bars.reduce(
    (largest, bar) => Math.max(largest, bar.value + (bar.halfWidth ?? 0)),
    axis.mark?.value ?? 0,
  );
  const scale = scaleLinear([0, most > 0 ? most : 1], [gutter, chartWidth - remarkWidth]);
  const bottom = top + bars.length * pitch;
  return chart(
    given,
    bottom + (axis.mark ? 24 : 6),
    words(axis.label, 0, top - 12, { style: "quiet" }),
    ...scale
      .ticks(6)
      .flatMap((tick) => [
        line(scale(tick), top - 8, scale(tick), bottom, "grid"),
        words(axis.tick(tick), scale(tick), top - 12, { anchor: "middle", style: "quiet" }),
      ]),
    ...markLine(axis, scale, bottom),
    ...bars.map((bar, i) => row(bar, top + i * pitch + 6, { scale, mark: axis.mark?.value }, given.id)),
  );
}

interface Places {
  readonly scale: (value: number) => number;
  readonly mark: number | undefined;
}

function row(bar: RankedBar, y: number, places: Places, id: string): Markup {
  const { scale } = places;
  const { name, fill, value, halfWidth, remark } = bar;
  const low = Math.max(0, value - (halfWidth ?? 0));
  const ends = halfWidth ? ([scale(low), scale(value + halfWidth)] as const) : null;
  const x = remarkPlace(remark, scale(value + (halfWidth ?? 0)) + 10, places);
  return element(
    "g",
    {},
    element("title", {}, `${name}: ${remark}`),
    words(fittedWords(name, gutter - 12), 0, y + 14, { style: "name" }),
    ...filledBox(id, fill, { x: gutter, y, width: Math.max(1, scale(value) - gutter), height }),
    ...(ends ? lyingWhisker(scale(value), ends, y + height / 2) : []),
    words(fittedWords(remark, chartWidth - x), x, y + 14),
  );
}

/** Behind the mark where the mark would go through it. */
function remarkPlace(remark: string, x: number, { scale, mark }: Places): number {
  if (mark === undefined) return x;
  const at = scale(mark);
  return x <= at && at <= x + widthOfWords(remark) ? at + 10 : x;
}

function markLine({ mark }: RankedAxis, scale: (value: number) => number, bottom: number): readonly Child[] {
  if (!mark) return [];
  const x = scale(mark.value);
  return [line(x, top - 8, x, bottom + 4, "mark"), words(mark.label, x, bottom + 18, { anchor: "middle" })];
}
