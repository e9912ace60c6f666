// Cycle times counted in bins that all stations share, so that their shapes can be held against each other.
import { bisectLeft, bisectRight } from "d3-array";
import { scaleLinear } from "d3-scale";
import type { StationCycles } from "#analysis/replication/stationCycles.ts";
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
  const split = cycles.map(({ station, seconds }) => {
    const shown = bisectRight(seconds, limit);
    return { station, shown: seconds.subarray(0, shown), longer: seconds.subarray(shown) };
  });
  const [low, high] = extent(split.map(({ shown }) => shown));
  if (low > high) return [];
  // A cycle that never varies is one bar in the middle, a tenth of a second wide.
  const isSingle = high - low < 0.01;
  const scale = scaleLinear(isSingle ? [low - 0.05, high + 0.05] : [low, high], [0, 1]).nice(binsWanted);
  const [first = 0, last = 1] = scale.domain();
  // Strictly inside: a last bin that begins where it ends would keep its cycles from being seen.
  const inside = scale.ticks(binsWanted).filter((tick) => tick > first + rounding && tick < last - rounding);
  // The rounded ends may lie a last bit inside the values.
  const edges = [Math.min(first, low), ...(isSingle ? [] : inside), Math.max(last, high)];
  return split.flatMap(({ station, shown, longer }) => [
    ...countedBetween(edges, shown).map((bin) => ({ station, ...bin, isBeyond: false })),
    ...beyond(station, longer, last),
  ]);
}

/** Of all lists, each in order; upside down where all are empty. */
function extent(lists: readonly Float64Array[]): readonly [low: number, high: number] {
  const filled = lists.filter(({ length }) => length > 0);
  return [Math.min(...filled.map((list) => list[0]!)), Math.max(...filled.map((list) => list.at(-1)!))];
}

/** From each edge to just before the next; the last bin has its end as well. */
function countedBetween(
  edges: readonly number[],
  values: Float64Array,
): readonly Pick<CycleBin, "from" | "to" | "count">[] {
  const below = edges.map((edge, i) => (i === edges.length - 1 ? values.length : bisectLeft(values, edge)));
  return edges.slice(1).map((to, i) => ({ from: edges[i]!, to, count: below[i + 1]! - below[i]! }));
}

/** As far again as nineteen of twenty spread, three times over: what is longer is another story. */
function longestShown(cycles: readonly StationCycles[]): number {
  const spreads = cycles.flatMap(({ spread }) => (spread ? [spread] : []));
  return spreads.reduce((most, { p05, p95 }) => Math.max(most, p95 + 3 * (p95 - p05) + 0.01), 0);
}

function beyond(station: string, longer: Float64Array, from: number): readonly CycleBin[] {
  return longer.length === 0 ? [] : [{ station, from, to: longer.at(-1)!, count: longer.length, isBeyond: true }];
}

export function cycleBinsTable(bins: readonly CycleBin[]): Table {
  const columns = [
    text("station", "Whose cycles"),
    number("from_s", "Shortest time counted here", "s"),
    number("to_s", "Cycles are shorter than this; in the last bin at most as long", "s"),
    integer("cycles", "Number of cycles"),
  ];
  return fillTable(
    {
      name: "cycle-times",
      meaning: "Number of cycles of a station, shot to shot, between two times.",
      columns,
    },
    bins.filter(({ count }) => count > 0).map(({ station, from, to, count }) => [station, from, to, count]),
  );
}
