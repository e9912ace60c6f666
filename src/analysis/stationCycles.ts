// The cycles of each station in one replication, shot to shot.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import type { CellRecord } from "#cell/cellRecord.ts";
import { quantiles, type Quantiles } from "./quantiles.ts";

/** Seconds from each delivery of one station to its next. */
export interface StationCycles {
  readonly station: string;
  readonly seconds: readonly number[];
  /** Null where there is no cycle. */
  readonly spread: Quantiles | null;
}

export function stationCycles({ stations }: CellRecord): readonly StationCycles[] {
  return stations.map(({ name, shotTicks }) => {
    const seconds = shotTicks.slice(1).map((tick, i) => (tick - shotTicks[i]!) / TICKS_PER_SECOND);
    return { station: name, seconds, spread: seconds.length === 0 ? null : quantiles(seconds) };
  });
}
