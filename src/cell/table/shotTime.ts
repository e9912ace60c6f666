// How long a station's whole shot takes: as measured, or at a rate.
import { distributionMean } from "#engine/distributions/moments.ts";
import type { DrawnTime } from "#engine/compiler/stepTable.ts";
import type { StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { massDistribution } from "#cell/words/tableWords.ts";
import { shotMass } from "./shotMass.ts";

/** A measured time needs no mass. */
export function shotTime(measured: TimeOrRate, station: StationSpec): DrawnTime {
  return measured.by === "time" ? { distribution: measured.time } : massDistribution(measured, shotMass(station));
}

/** Mean seconds. */
export function rechargeSeconds({ recharge, ...station }: StationSpec): number {
  return recharge.by === "time"
    ? distributionMean(recharge.time)
    : shotMass(station) / 1e6 / distributionMean(recharge.rate);
}
