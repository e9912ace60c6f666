// Cycle times counted in bins that all stations share, so that their shapes can be compared; the few extreme ones are counted apart.
import { nice, ticks } from "d3-array";
import type { StationCycles } from "#analysis/replication/stationCycles.ts";
import { countBelow, countNotAbove, countOf, timeAt, type CountedTimes } from "#cell/records/countedTimes.ts";
import { integer, number, text } from "./columns.ts";
import { fillTable, type Table } from "./table.ts";

export interface CycleBin {
  readonly station: string;
  readonly from: number;
  readonly to: number;
  readonly count: number;
  /** Outside the axis: shorter or longer than 99 % of the cycles, as over a night or a long stop. */
  readonly isBeyond: boolean;
}

const binsWanted = 48;
/** Seconds; far less than a bin. */
const rounding = 1e-9;
/** Share of the cycles of each station that may lie beyond each end of the axis. */
const tail = 0.005;
/** Seconds; cycles that differ by less are constant. */
const leastSpread = 0.01;

export function cycleBins(cycles: readonly StationCycles[]): readonly CycleBin[] {
  const [low, high] = shownRange(cycles);
  if (low > high) return [];
  // Cycles that never vary still need an axis.
  const isSingle = high - low < leastSpread;
  const [first, last] = isSingle ? nice(low * 0.98, high * 1.02, binsWanted) : nice(low, high, binsWanted);
  // Strictly inside: a last bin that begins where it ends would keep its cycles from being seen.
  const inside = ticks(first, last, binsWanted).filter((tick) => tick > first + rounding && tick < last - rounding);
  // The rounded ends may lie a last bit inside the values.
  const edges = [Math.min(first, low), ...(isSingle ? [] : inside), Math.max(last, high)];
  return cycles.flatMap(({ station, times }) => {
    const [before, until] = [countBelow(times, edges[0]!), countNotAbove(times, edges.at(-1)!)];
    return [
      ...beyond(station, times, 0, before),
      ...countedBetween(edges, times).map((bin) => ({ station, ...bin, isBeyond: false })),
      ...beyond(station, times, until, countOf(times)),
    ];
  });
}

/** The only cycle time of a station whose cycles do not vary; undefined where they vary. */
export function constantCycle({ times }: StationCycles): number | undefined {
  if (countOf(times) === 0) return undefined;
  const [first, last] = tailsOf(times);
  return last - first < leastSpread ? first : undefined;
}

/** From the shortest to the longest cycle without the tails of each station; upside down where there is no cycle. */
function shownRange(cycles: readonly StationCycles[]): readonly [low: number, high: number] {
  const ends = cycles.filter(({ times }) => countOf(times) > 0).map(({ times }) => tailsOf(times));
  return [Math.min(...ends.map(([low]) => low)), Math.max(...ends.map(([, high]) => high))];
}

/** Order statistics, so that a value outside was counted, not computed. */
function tailsOf(times: CountedTimes): readonly [low: number, high: number] {
  const count = countOf(times);
  const cut = Math.floor(tail * count);
  return [timeAt(times, cut), timeAt(times, count - 1 - cut)];
}

/** From each edge to just before the next; the last bin has its end as well. */
function countedBetween(
  edges: readonly number[],
  times: CountedTimes,
): readonly Pick<CycleBin, "from" | "to" | "count">[] {
  const below = edges.map((edge, i) => (i === edges.length - 1 ? countNotAbove : countBelow)(times, edge));
  return edges.slice(1).map((to, i) => ({ from: edges[i]!, to, count: below[i + 1]! - below[i]! }));
}

/** From one rank to just before the other. */
function beyond(station: string, times: CountedTimes, rank: number, end: number): readonly CycleBin[] {
  if (end === rank) return [];
  return [{ station, from: timeAt(times, rank), to: timeAt(times, end - 1), count: end - rank, isBeyond: true }];
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
