// The patterns that distinguish fills without color: in gray print and for color-blind readers.
import { element, type Child, type Markup } from "./markup.ts";
import type { Fill } from "#report/words/stateLook.ts";

interface Pattern {
  readonly size: number;
  readonly turn?: number;
  readonly path: string;
}

/** Fills without a pattern are plain. */
const patterns: Readonly<Partial<Record<Fill, Pattern>>> = {
  melt: { size: 8, path: "M1 2H3.5M5 6H7.5" },
  regrind: { size: 5, turn: -45, path: "M0 2.5H5" },
  delivery: { size: 6, turn: 45, path: "M0 3H6" },
  shift: { size: 3, path: "M1.5 0V3" },
  move: { size: 6, path: "M3 0V6" },
  air: { size: 5, path: "M1 2.5H3" },
  removal: { size: 5, path: "M0 2.5H5" },
  extra: { size: 7, turn: 45, path: "M0 3.5H7M3.5 0V7" },
  wait: { size: 7, turn: -45, path: "M0 3.5H7" },
  setup: { size: 6, path: "M1 3H3M4 0V2" },
  changeover: { size: 6, turn: 45, path: "M0 3H6" },
  pause: { size: 4, path: "M1 2H3" },
  stopped: { size: 5, turn: 45, path: "M0 2.5H5M2.5 0V5" },
};

/** The patterns of one chart; `id` separates the charts of a page. */
export function patternDefinitions(id: string): Markup {
  const definitions = Object.entries(patterns).map(([fill, { size, turn = 0, path }]) =>
    element(
      "pattern",
      {
        id: `${id}-${fill}`,
        width: size,
        height: size,
        patternUnits: "userSpaceOnUse",
        patternTransform: `rotate(${turn})`,
      },
      element("path", { d: path, class: `hatch ${fill}` }),
    ),
  );
  return element("defs", {}, ...definitions);
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Any shape of one fill, without an outline. */
export function filledPath(id: string, fill: Fill, d: string): readonly Child[] {
  const pattern = patterns[fill] ? [element("path", { d, fill: `url(#${id}-${fill})` })] : [];
  return [element("path", { d, class: fill }), ...pattern];
}

/** A box of one fill: its hue, and its pattern over it. */
export function filledBox(id: string, fill: Fill, { x, y, width, height }: Box): readonly Child[] {
  const pattern = patterns[fill] ? [element("rect", { x, y, width, height, fill: `url(#${id}-${fill})` })] : [];
  if (fill === "rest") {
    const middle = y + height / 2;
    return [element("line", { x1: x, x2: x + width, y1: middle, y2: middle, class: "rest" })];
  }
  return [element("rect", { x, y, width, height, class: `box ${fill}` }), ...pattern];
}

/** A box of one fill between two shares of a track's width. */
export function stretchedBox(
  id: string,
  fill: Fill,
  { from, to, height }: { readonly from: number; readonly to: number; readonly height: number },
): readonly Child[] {
  const box = { x: `${(from * 100).toFixed(2)}%`, width: `${((to - from) * 100).toFixed(2)}%`, height };
  const pattern = patterns[fill] ? [element("rect", { ...box, fill: `url(#${id}-${fill})` })] : [];
  return [element("rect", { ...box, class: `box ${fill}` }), ...pattern];
}
