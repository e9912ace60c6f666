// The cycles of each station in one replication, shot to shot.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { quantilesOfSorted, type Quantiles } from "#analysis/statistics/quantiles.ts";

export interface StationCycles {
  readonly station: string;
  /** Times between deliveries of the station, the shortest first; a typed array, because a year has millions. */
  readonly seconds: Float64Array;
  /** Null where there is no cycle. */
  readonly spread: Quantiles | null;
}

export function stationCycles({ stations }: CellRecord): readonly StationCycles[] {
  return stations.map(({ name, shotTicks }) => {
    const cycles = new Float64Array(Math.max(0, shotTicks.length - 1));
    for (let i = 0; i < cycles.length; i++) cycles[i] = (shotTicks[i + 1]! - shotTicks[i]!) / TICKS_PER_SECOND;
    const seconds = cycles.toSorted();
    return { station: name, seconds, spread: seconds.length === 0 ? null : quantilesOfSorted(seconds) };
  });
}
