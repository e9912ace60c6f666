// How the cycle times of each station spread: one small histogram a station over one axis of time.
import { max } from "d3-array";
import { scaleLinear } from "d3-scale";
import type { StationCycles } from "#analysis/replication/stationCycles.ts";
import { chart, chartWidth, fittedWords, line, words, type ChartWords } from "./chart.ts";
import type { CycleBin } from "#report/tables/cycleBins.ts";
import { seconds } from "#report/words/digits.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { element, type Child, type Markup } from "./markup.ts";

const left = 116;
const right = chartWidth - 190;
const top = 8;

export function cycleChart(cycles: readonly StationCycles[], bins: readonly CycleBin[], given: ChartWords): Markup {
  // Many stations share the height of the page.
  const pitch = cycles.length <= 2 ? 96 : cycles.length <= 8 ? 62 : 44;
  const bottom = top + cycles.length * pitch;
  const shown = bins.filter(({ isBeyond }) => !isBeyond);
  const x = scaleLinear([shown[0]?.from ?? 0, shown.at(-1)?.to ?? 1], [left, right]);
  const most = max(shown, ({ count }) => count) ?? 1;
  return chart(
    given,
    bottom + 38,
    ...x
      .ticks(10)
      .flatMap((tick) => [
        line(x(tick), top, x(tick), bottom, "grid"),
        words(String(tick), x(tick), bottom + 16, { anchor: "middle", style: "quiet" }),
      ]),
    words("seconds from shot to shot", left, bottom + 32, { style: "quiet" }),
    ...cycles.map((cycle, i) => {
      const base = top + (i + 1) * pitch;
      return station(
        cycle,
        bins.filter((bin) => bin.station === cycle.station),
        { x, base, height: (pitch - 12) / most },
      );
    }),
  );
}

interface Place {
  readonly x: (seconds: number) => number;
  readonly base: number;
  /** Of one cycle. */
  readonly height: number;
}

function station(cycle: StationCycles, bins: readonly CycleBin[], { x, base, height }: Place): Markup {
  const bars = bins
    .filter(({ count, isBeyond }) => count > 0 && !isBeyond)
    .map(({ from, to, count }) => {
      const box = { x: x(from), y: base - count * height, width: x(to) - x(from), height: count * height };
      return element("rect", { ...box, class: "bin" }, element("title", {}, `${from} to ${to} s: ${count} cycles`));
    });
  return element(
    "g",
    {},
    words(fittedWords(cycle.station, left - 10), 0, base - 6, { style: "name" }),
    ...bars,
    line(left, base, right, base, "base"),
    ...spreadWords(cycle, base, x),
    ...bins
      .filter(({ isBeyond }) => isBeyond)
      .map(({ count, to }) => words(longerWords(count, to), right + 10, base - 35, { style: "quiet" })),
  );
}

function longerWords(count: number, longest: number): string {
  return `${count} longer, up to ${formatQuantity(longest, "time", { digits: 2 })}`;
}

function spreadWords({ spread }: StationCycles, base: number, x: (seconds: number) => number): readonly Child[] {
  if (!spread) return [words("too few shots", right + 10, base - 6)];
  const { p05, p50, p95 } = spread;
  return [
    element("path", { d: `M${x(p50).toFixed(2)} ${base}l-5 7h10z`, class: "median" }),
    words(`median ${seconds(p50)}`, right + 10, base - 20),
    words(`9 of 10: ${p05.toFixed(2)} to ${seconds(p95)}`, right + 10, base - 5, { style: "quiet" }),
  ];
}
