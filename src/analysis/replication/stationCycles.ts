// The cycles of each station in one replication, shot to shot.
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { countOf, timeAt, type CountedTimes } from "#cell/records/countedTimes.ts";
import { quantilesOf, type Quantiles } from "#analysis/statistics/quantiles.ts";

export interface StationCycles {
  readonly station: string;
  /** Times between deliveries of the station. */
  readonly times: CountedTimes;
  /** Null where there is no cycle. */
  readonly spread: Quantiles | null;
}

export function stationCycles({ stations }: CellRecord): readonly StationCycles[] {
  return stations.flatMap(({ name: station, cycles: times }) => {
    if (!times) return [];
    const count = countOf(times);
    return [{ station, times, spread: count === 0 ? null : quantilesOf(count, (rank) => timeAt(times, rank)) }];
  });
}
