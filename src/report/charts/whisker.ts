// A value with its 95 % interval in a picture: a line with two ends and a dot in the middle.
import { line } from "./chart.ts";
import { element, type Child } from "./markup.ts";

/** Horizontal, from `low` to `high`; only the dot where there is no interval. */
export function lyingWhisker(
  middle: number | string,
  ends: readonly [low: number | string, high: number | string] | null,
  y: number,
): readonly Child[] {
  const dot = element("circle", { cx: middle, cy: y, r: 4, class: "dot" });
  if (!ends) return [dot];
  const [low, high] = ends;
  return [
    line(low, y, high, y, "whisker"),
    line(low, y - 5, low, y + 5, "whisker"),
    line(high, y - 5, high, y + 5, "whisker"),
    dot,
  ];
}
