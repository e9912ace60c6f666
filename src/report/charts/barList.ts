// Rows of a name, a bar and a remark: the words wrap and keep their size at every width of the page.
import { line, words, type ChartWords } from "./chart.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { patternDefinitions } from "./patterns.ts";
import { straightScale } from "./straightScale.ts";

export const trackHeight = 18;
/** Lines of the grid reach from row to row. */
const reach = 5;

export interface ListRow {
  readonly name: string;
  readonly remark: string;
  /** Belongs to the row above. */
  readonly isPart: boolean;
  readonly track: readonly Child[];
}

export interface ListHead {
  readonly label: string;
  readonly track: readonly Child[];
}

/** A horizontal position or length on a track, from 0 to 1. */
export function place(share: number): string {
  return `${(share * 100).toFixed(2)}%`;
}

export function barList(rows: readonly ListRow[], head: ListHead, { id, title }: ChartWords): Markup {
  const top = element(
    "li",
    { class: "head", "aria-hidden": "true" },
    element("span", {}, head.label),
    trackOf(patternDefinitions(id), ...head.track),
  );
  return element("ul", { class: "bars", id, "aria-label": title }, top, ...rows.map(rowOf));
}

function rowOf({ name, remark, isPart, track }: ListRow): Markup {
  return element(
    "li",
    { class: isPart ? "part" : undefined },
    element("span", { class: "name" }, name),
    trackOf(...track),
    element("span", {}, remark),
  );
}

function trackOf(...content: readonly Child[]): Markup {
  return element("svg", { class: "track", width: "100%", height: trackHeight, "aria-hidden": "true" }, ...content);
}

/** The axis of all tracks: its words for the head, its grid for each row. */
export interface TrackAxis {
  readonly at: (value: number) => number;
  readonly labels: readonly Child[];
  readonly grid: readonly Child[];
}

export function trackAxis([low, high]: readonly [number, number], tick: (value: number) => string): TrackAxis {
  const at = straightScale([low, high > low ? high : low + 1], [0, 1]);
  const ticks = at.ticks(5);
  return {
    at,
    labels: ticks.map((value) =>
      words(tick(value), place(at(value)), 13, { anchor: anchorAt(at(value)), style: "quiet" }),
    ),
    grid: ticks.map((value) => upright(at(value), value === 0 && low < 0 ? "base" : "grid")),
  };
}

/** Words at an end of the track stay beside it. */
function anchorAt(share: number): "start" | "middle" | "end" {
  return share < 0.06 ? "start" : share > 0.92 ? "end" : "middle";
}

/** A line through the row at a share of the track's width. */
export function upright(share: number, style: string): Markup {
  return line(place(share), -reach, place(share), trackHeight + reach, style);
}
