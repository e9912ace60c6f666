// One measure over the replications: a dot each, their mean, and the band of its 95 % interval.
import type { MeasureSummary } from "#analysis/study/summarizeMeasures.ts";
import { chart, chartWidth, line, words, type ChartWords } from "./chart.ts";
import { withInterval } from "#report/words/digits.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { straightScale } from "./straightScale.ts";

const left = 70;
const right = chartWidth - 190;
const top = 14;
const bottom = 190;

export function replicationChart(summary: MeasureSummary, given: ChartWords): Markup {
  const { values, interval, min, max } = summary;
  const half = interval.halfWidth ?? 0;
  const [low, high] = [Math.min(min, interval.mean - half), Math.max(max, interval.mean + half)];
  // Equal values still need an axis.
  const margin = (high - low) * 0.08 || Math.abs(high) * 0.01 || 1;
  const x = straightScale([0.5, values.length + 0.5], [left, right]);
  const y = straightScale([low - margin, high + margin], [bottom, top]);
  const mean = y(interval.mean);
  return chart(
    given,
    bottom + 36,
    ...y
      .ticks(5)
      .flatMap((tick) => [
        line(left, y(tick), right, y(tick), "grid"),
        words(String(tick), left - 8, y(tick) + 4, { anchor: "end", style: "quiet" }),
      ]),
    element("rect", {
      x: left,
      width: right - left,
      y: y(interval.mean + half),
      height: y(interval.mean - half) - y(interval.mean + half),
      class: "band",
    }),
    line(left, mean, right, mean, "mean"),
    ...values.map((value, i) =>
      value === null
        ? ""
        : dot(x(i + 1), y(value), `replication ${i + 1}: ${withInterval({ mean: value, halfWidth: null })}`),
    ),
    words(withInterval(interval), right + 10, mean + 4, { style: "name" }),
    words(half > 0 ? "mean and 95 % interval" : "mean", right + 10, mean + 20, { style: "quiet" }),
    ...replicationAxis(values.length, x),
  );
}

function replicationAxis(count: number, x: (value: number) => number): readonly Child[] {
  const every = Math.ceil(count / 20);
  const shown = Array.from({ length: count }, (_, i) => i + 1).filter((number) => (number - 1) % every === 0);
  return [
    ...shown.map((number) => words(String(number), x(number), bottom + 18, { anchor: "middle", style: "quiet" })),
    words("replication", left, bottom + 32, { style: "quiet" }),
  ];
}

function dot(cx: number, cy: number, title: string): Markup {
  return element("circle", { cx, cy, r: 4.5, class: "dot" }, element("title", {}, title));
}
