// The rate of the screw in continuous extrusion, and the melt that no mold takes.
import { extrusionRate, fullRateSeconds, slowedBy } from "#cell/delivery/continuousExtrusion.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "./idealCycle.ts";

export interface ScrewPace {
  /** `matched`: at the rate of the molds; `slowest`: at its lowest rate; `full`: the molds could take more; `fixed`: not matched. */
  readonly kind: "matched" | "slowest" | "full" | "fixed";
  /** Mean seconds of a parison, at the present rate and at the full rate. */
  readonly parison: number;
  readonly fullParison: number;
  /** Share of the melt that no mold takes, at mean times. */
  readonly excessShare: number;
  /** kg/s, now and at most; absent where masses are not given. */
  readonly rates?: { readonly now: number; readonly full: number };
}

const milligramsPerKilogram = 1e6;

/** Undefined for every other kind of delivery. */
export function screwPace(scenario: Scenario, { secondsPerShot }: IdealCycle): ScrewPace | undefined {
  const { delivery } = scenario;
  if (delivery.kind !== "continuous") return undefined;
  const slower = slowedBy(scenario);
  const perTick = extrusionRate(scenario);
  const now = perTick === undefined ? undefined : (perTick * TICKS_PER_SECOND) / milligramsPerKilogram;
  const fullParison = fullRateSeconds(scenario);
  const parison = fullParison * slower;
  const isMatched = delivery.moldPace !== undefined && delivery.moldPace <= parison * (1 + 1e-9);
  const turned = slower === 1 ? "full" : isMatched ? "matched" : "slowest";
  return {
    kind: delivery.rate === "fixed" ? "fixed" : turned,
    parison,
    fullParison,
    excessShare: Math.max(0, 1 - parison / secondsPerShot),
    ...(now === undefined ? {} : { rates: { now, full: now * slower } }),
  };
}
