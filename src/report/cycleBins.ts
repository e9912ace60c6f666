// Cycle times counted in bins that all stations share, so that their shapes can be held against each other.
import { bin, extent } from "d3-array";
import { scaleLinear } from "d3-scale";
import type { StationCycles } from "#analysis/stationCycles.ts";
import { integer, number, text } from "./columns.ts";
import { fillTable, type Table } from "./table.ts";

export interface CycleBin {
  readonly station: string;
  readonly from: number;
  readonly to: number;
  readonly count: number;
  /** Gathers the few that are so long that the others would share one bar, as over a night or a long stop. */
  readonly isBeyond: boolean;
}

const binsWanted = 48;
/** Seconds; far less than a bin. */
const rounding = 1e-9;

export function cycleBins(cycles: readonly StationCycles[]): readonly CycleBin[] {
  const limit = longestShown(cycles);
  const [low, high] = extent(cycles.flatMap(({ seconds }) => seconds.filter((each) => each <= limit)));
  if (low === undefined || high === undefined) return [];
  // A cycle that never varies is one bar in the middle, a tenth of a second wide.
  const domain = high - low < 0.01 ? [low - 0.05, high + 0.05] : [low, high];
  const scale = scaleLinear(domain, [0, 1]).nice(binsWanted);
  const [first = 0, last = 1] = scale.domain();
  // Strictly inside: a last bin that begins where it ends would keep its cycles from being seen.
  const inside = scale.ticks(binsWanted).filter((tick) => tick > first + rounding && tick < last - rounding);
  const count = bin()
    // The rounded ends may lie a last bit inside the values.
    .domain([Math.min(first, low), Math.max(last, high)])
    .thresholds(high - low < 0.01 ? [] : inside);
  return cycles.flatMap(({ station, seconds }) => [
    ...count(seconds.filter((each) => each <= limit)).flatMap((found) => {
      const { x0: from = first, x1: to = last, length } = found;
      return to > from ? [{ station, from, to, count: length, isBeyond: false }] : [];
    }),
    ...beyond(station, seconds, limit, last),
  ]);
}

/** As far again as nineteen of twenty spread, three times over: what is longer is another story. */
function longestShown(cycles: readonly StationCycles[]): number {
  const spreads = cycles.flatMap(({ spread }) => (spread ? [spread] : []));
  return spreads.reduce((most, { p05, p95 }) => Math.max(most, p95 + 3 * (p95 - p05) + 0.01), 0);
}

function beyond(station: string, seconds: readonly number[], limit: number, from: number): readonly CycleBin[] {
  const longer = seconds.filter((each) => each > limit);
  const to = longer.reduce((most, each) => Math.max(most, each), 0);
  return longer.length === 0 ? [] : [{ station, from, to, count: longer.length, isBeyond: true }];
}

export function cycleBinsTable(bins: readonly CycleBin[]): Table {
  const columns = [
    text("station", "Whose cycles"),
    number("from_s", "Shortest time counted here", "s"),
    number("to_s", "Shorter than this, or in the last bin just as long", "s"),
    integer("cycles", "Number of cycles"),
  ];
  return fillTable(
    {
      name: "cycle-times",
      meaning: "So many cycles of a station, shot to shot, took a time between two limits.",
      columns,
    },
    bins.filter(({ count }) => count > 0).map(({ station, from, to, count }) => [station, from, to, count]),
  );
}
