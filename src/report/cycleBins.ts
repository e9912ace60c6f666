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
}

const binsWanted = 48;

export function cycleBins(cycles: readonly StationCycles[]): readonly CycleBin[] {
  const [low, high] = extent(cycles.flatMap(({ seconds }) => seconds));
  if (low === undefined || high === undefined) return [];
  // A cycle that never varies is one bar in the middle, a tenth of a second wide.
  const domain = high - low < 0.01 ? [low - 0.05, high + 0.05] : [low, high];
  const scale = scaleLinear(domain, [0, 1]).nice(binsWanted);
  const [first = 0, last = 1] = scale.domain();
  const count = bin()
    .domain([first, last])
    .thresholds(high - low < 0.01 ? [] : scale.ticks(binsWanted));
  return cycles.flatMap(({ station, seconds }) =>
    count(seconds.slice()).flatMap((found) => {
      const { x0: from = first, x1: to = last, length } = found;
      return to > from ? [{ station, from, to, count: length }] : [];
    }),
  );
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
