// One fit in three panels: histogram with density, quantiles against quantiles, and values in the order of the log.
import { chart, line, words, type ChartWords } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { straightScale, type Scale } from "#report/charts/straightScale.ts";

export interface DrawnFit {
  /** In the order of the log. */
  readonly values: Float64Array;
  readonly sorted: Float64Array;
  /** Probability that a value is not exceeded; absent where no curve is fitted. */
  readonly probability?: (value: number) => number;
  readonly quantile?: (p: number) => number;
}

const [top, bottom] = [26, 220];
const panelWidth = 260;
const panels = [50, 370, 690] as const;
const mostBins = 30;
const curvePoints = 8;
/** More points cannot be distinguished. */
const mostPoints = 200;

export function fitChart(fit: DrawnFit, given: ChartWords): Markup {
  const [first, second, third] = panels;
  const { quantile } = fit;
  const others = quantile ? [...quantiles(fit, quantile, second), ...runs(fit, third)] : runs(fit, second);
  return chart(given, bottom + 40, ...histogram(fit, first), ...others);
}

function frame(title: string, x: Scale, y: Scale | undefined, label: string, left: number): readonly Child[] {
  return [
    words(title, left, top - 10, { style: "name" }),
    line(left, bottom, left + panelWidth, bottom, "base"),
    ...x.ticks(4).map((tick) => words(String(tick), x(tick), bottom + 16, { anchor: "middle", style: "quiet" })),
    ...(y?.ticks(4) ?? []).flatMap((tick) => [
      line(left, y!(tick), left + panelWidth, y!(tick), "grid"),
      words(String(tick), left - 6, y!(tick) + 4, { anchor: "end", style: "quiet" }),
    ]),
    words(label, left, bottom + 32, { style: "quiet" }),
  ];
}

/** Equal values still need an axis. */
function rangeOf(values: Float64Array): readonly [low: number, high: number] {
  const [low, high] = [values[0]!, values.at(-1)!];
  const margin = (high - low) * 0.05 || low * 0.05 || 1;
  return [Math.max(0, low - margin), high + margin];
}

function histogram({ sorted, probability }: DrawnFit, left: number): readonly Child[] {
  const [low, high] = rangeOf(sorted);
  const bins = Math.min(mostBins, Math.ceil(Math.sqrt(sorted.length)) + 1);
  const width = (high - low) / bins;
  const counts = new Float64Array(bins);
  for (const value of sorted) counts[Math.min(bins - 1, Math.floor((value - low) / width))]! += 1;
  // The curve has many times as many points as there are bins, each with the probability of its own small cell.
  const cell = width / curvePoints;
  const cells = Array.from({ length: bins * curvePoints }, (_, i) => low + (i + 0.5) * cell);
  const expected = probability
    ? cells.map((x) => (probability(x + cell / 2) - probability(x - cell / 2)) * sorted.length * curvePoints)
    : [];
  const x = straightScale([low, high], [left, left + panelWidth]);
  const most = [...counts, ...expected].reduce((high_, count) => Math.max(high_, count), 0);
  const y = straightScale([0, most * 1.05], [bottom, top]);
  const curve = expected.map((count, i) => `${round(x(cells[i]!))},${round(y(count))}`).join(" ");
  return [
    ...frame(probability ? "values and fitted density" : "values", x, y, "seconds", left),
    ...Array.from(counts, (count, i) =>
      element("rect", {
        x: x(low + i * width),
        y: y(count),
        width: Math.max(0, x(low + width) - x(low) - 0.5),
        height: bottom - y(count),
        class: "bin",
      }),
    ),
    curve === "" ? "" : element("polyline", { points: curve, fill: "none", class: "mean" }),
  ];
}

const round = (value: number): number => Number(value.toFixed(1));

function quantiles({ sorted }: DrawnFit, quantile: (p: number) => number, left: number): readonly Child[] {
  const count = Math.min(mostPoints, sorted.length);
  const points = Array.from({ length: count }, (_, i) => {
    const p = (i + 0.5) / count;
    return { fitted: quantile(p), value: sorted[Math.floor(p * sorted.length)]! };
  }).filter(({ fitted }) => Number.isFinite(fitted));
  const all = Float64Array.from(points.flatMap(({ fitted, value }) => [fitted, value])).toSorted();
  const [low, high] = rangeOf(all);
  const [x, y] = [straightScale([low, high], [left, left + panelWidth]), straightScale([low, high], [bottom, top])];
  return [
    ...frame("measured over fitted quantiles", x, y, "fitted, seconds", left),
    line(x(low), y(low), x(high), y(high), "mark"),
    ...points.map(({ fitted, value }) => element("circle", { cx: x(fitted), cy: y(value), r: 2, class: "median" })),
  ];
}

function runs({ values, sorted }: DrawnFit, left: number): readonly Child[] {
  const every = Math.max(1, Math.ceil(values.length / mostPoints));
  const [low, high] = rangeOf(sorted);
  const x = straightScale([1, Math.max(2, values.length)], [left, left + panelWidth]);
  const y = straightScale([low, high], [bottom, top]);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const label = every === 1 ? "number" : `number; 1 of ${every} is drawn`;
  return [
    ...frame("values in the order of the log", x, y, label, left),
    line(left, y(mean), left + panelWidth, y(mean), "mean"),
    ...Array.from(values).flatMap((value, i) =>
      i % every === 0 ? [element("circle", { cx: x(i + 1), cy: y(value), r: 2, class: "median" })] : [],
    ),
  ];
}
