// Bars of one measure under each other, with intervals; what lowers the measure lies left of zero.
import type { ChartWords } from "./chart.ts";
import { barList, place, trackAxis, trackHeight, upright, type ListRow, type TrackAxis } from "./barList.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { stretchedBox } from "./patterns.ts";
import type { Fill } from "#report/words/stateLook.ts";
import { lyingWhisker } from "./whisker.ts";

export interface RankedBar {
  readonly name: string;
  readonly fill: Fill;
  readonly value: number;
  readonly halfWidth: number | null;
  /** The value in words, beside the bar. */
  readonly remark: string;
  /** Belongs to the bar above, as a step to its resource. */
  readonly isPart?: boolean;
}

export interface RankedAxis {
  readonly label: string;
  readonly tick: (value: number) => string;
  /** A value to compare all bars with. */
  readonly mark?: { readonly value: number; readonly label: string };
}

export function rankedBars(bars: readonly RankedBar[], { label, tick, mark }: RankedAxis, given: ChartWords): Markup {
  const ends = bars.flatMap(({ value, halfWidth }) => [value - (halfWidth ?? 0), value + (halfWidth ?? 0)]);
  const low = bars.some(({ value }) => value < 0) ? Math.min(...ends) : 0;
  const axis = trackAxis([low, Math.max(0, mark?.value ?? 0, ...ends)], tick);
  const marked = mark === undefined ? [] : [upright(axis.at(mark.value), "mark")];
  const rows = bars.map((bar) => rowOf(bar, axis, marked, given.id));
  const named = mark === undefined ? label : `${label}; dashed: ${mark.label}`;
  return barList(rows, { label: named, track: axis.labels }, given);
}

function rowOf(bar: RankedBar, { at, grid }: TrackAxis, marked: readonly Child[], id: string): ListRow {
  const { name, fill, value, halfWidth, remark, isPart = false } = bar;
  const [from, to] = [Math.min(0, value), Math.max(0, value)].map(at);
  // A whisker beyond the end of the axis would leave the page.
  const within = (end: number): string => place(Math.min(1, Math.max(0, at(end))));
  const ends = halfWidth ? ([within(value - halfWidth), within(value + halfWidth)] as const) : null;
  const track = [
    element("title", {}, `${name}: ${remark}`),
    ...grid,
    ...stretchedBox(id, fill, { from: from!, to: Math.max(to!, from! + 0.002), height: trackHeight }),
    ...marked,
    ...(ends ? lyingWhisker(place(at(value)), ends, trackHeight / 2) : []),
  ];
  return { name, remark, isPart, track };
}
