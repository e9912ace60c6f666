// How the cycle times of each station spread: one small histogram a station over one axis of time.
import { max } from "d3-array";
import type { StationCycles } from "#analysis/replication/stationCycles.ts";
import { chartWidth, fittedWords, line, namedChart, words, type ChartWords } from "./chart.ts";
import { constantCycle, type CycleBin } from "#report/tables/cycleBins.ts";
import { grouped, seconds } from "#report/words/digits.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { straightScale } from "./straightScale.ts";

const left = 116;
const right = chartWidth - 190;
const top = 8;

export function cycleChart(cycles: readonly StationCycles[], bins: readonly CycleBin[], given: ChartWords): Markup {
  // Many stations share the height of the page.
  const pitch = cycles.length <= 2 ? 96 : cycles.length <= 8 ? 62 : 44;
  const bottom = top + cycles.length * pitch;
  const shown = bins.filter(({ isBeyond }) => !isBeyond);
  const x = straightScale([shown[0]?.from ?? 0, shown.at(-1)?.to ?? 1], [left, right]);
  const most = max(shown, ({ count }) => count) ?? 1;
  const baseOf = (i: number): number => top + (i + 1) * pitch;
  const names = cycles.map(({ station: name }, i) =>
    words(fittedWords(name, left - 10), 0, baseOf(i) - 6, { style: "name" }),
  );
  return namedChart(
    given,
    { width: left - 4, height: bottom, content: names },
    bottom + 38,
    ...x
      .ticks(10)
      .flatMap((tick) => [
        line(x(tick), top, x(tick), bottom, "grid"),
        words(String(tick), x(tick), bottom + 16, { anchor: "middle", style: "quiet" }),
      ]),
    words("seconds from shot to shot", left, bottom + 32, { style: "quiet" }),
    ...cycles.map((cycle, i) => {
      const own = bins.filter((bin) => bin.station === cycle.station);
      return station(cycle, own, { x, base: baseOf(i), height: (pitch - 12) / most });
    }),
  );
}

interface Place {
  readonly x: (seconds: number) => number;
  readonly base: number;
  /** Of one cycle. */
  readonly height: number;
}

function station(cycle: StationCycles, bins: readonly CycleBin[], place: Place): Markup {
  const { x, base } = place;
  const constant = constantCycle(cycle);
  const beyond = bins.filter(({ isBeyond }) => isBeyond);
  return element(
    "g",
    {},
    ...(constant === undefined ? bars(bins, place) : [line(x(constant), base - 30, x(constant), base, "constant")]),
    line(left, base, right, base, "base"),
    ...(constant === undefined
      ? spreadWords(cycle, place)
      : [words(`always ${seconds(constant)}`, right + 10, base - 5)]),
    ...(beyond.length === 0 ? [] : [words(beyondWords(beyond), right + 10, base - 33, { style: "quiet" })]),
  );
}

function bars(bins: readonly CycleBin[], { x, base, height }: Place): readonly Child[] {
  return bins
    .filter(({ count, isBeyond }) => count > 0 && !isBeyond)
    .map(({ from, to, count }) => {
      const box = { x: x(from), y: base - count * height, width: x(to) - x(from), height: count * height };
      return element("rect", { ...box, class: "bin" }, element("title", {}, `${from} to ${to} s: ${count} cycles`));
    });
}

/** "12 cycles beyond, up to 9.3 h". */
function beyondWords(bins: readonly CycleBin[]): string {
  const count = bins.reduce((sum, bin) => sum + bin.count, 0);
  const longest = Math.max(...bins.map(({ to }) => to));
  const upTo = formatQuantity(longest, "time", { digits: 2 });
  return `${grouped(count)} ${count === 1 ? "cycle" : "cycles"} beyond, up to ${upTo}`;
}

function spreadWords({ spread }: StationCycles, { x, base }: Place): readonly Child[] {
  if (!spread) return [words("too few shots", right + 10, base - 6)];
  const { p05, p50, p95 } = spread;
  return [
    element("path", { d: `M${x(p50).toFixed(2)} ${base}l-5 7h10z`, class: "median" }),
    words(`median ${seconds(p50)}`, right + 10, base - 19),
    words(`9 of 10: ${p05.toFixed(2)} to ${seconds(p95)}`, right + 10, base - 5, { style: "quiet" }),
  ];
}
