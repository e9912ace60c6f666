// How long a station's whole shot takes: as measured, or at a rate.
import { lawMean } from "#engine/distributions/law.ts";
import type { TimeLaw } from "#engine/compiler/stepTable.ts";
import type { StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { massLaw } from "#cell/words/tableWords.ts";
import { shotMass } from "./shotMass.ts";

/** A measured time needs no mass. */
export function shotLaw(measured: TimeOrRate, station: StationSpec): TimeLaw {
  return measured.by === "time" ? { law: measured.time } : massLaw(measured, shotMass(station));
}

/** Mean seconds. */
export function rechargeSeconds({ recharge, ...station }: StationSpec): number {
  return recharge.by === "time" ? lawMean(recharge.time) : shotMass(station) / 1e6 / lawMean(recharge.rate);
}
