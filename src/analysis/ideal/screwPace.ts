// The rate of the screw in continuous extrusion, and the melt that no mold takes.
import { extrusionRate, fullRateSeconds, slowedBy } from "#cell/delivery/continuousExtrusion.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "./idealCycle.ts";

export interface ScrewPace {
  /** `matched`: at the rate of the molds; `slowest`: at its lowest rate; `full`: the molds could take more; `fixed`: not matched. */
  readonly kind: "matched" | "slowest" | "full" | "fixed";
  /** kg/s, at the present rate and at the full rate. */
  readonly rate: number;
  readonly fullRate: number;
  /** Mean seconds of a parison, at the present rate and at the full rate. */
  readonly parison: number;
  readonly fullParison: number;
  /** kg/s that no mold takes, at mean times. */
  readonly excess: number;
}

const milligramsPerKilogram = 1e6;

/** Undefined for every other kind of delivery. */
export function screwPace(scenario: Scenario, { secondsPerShot }: IdealCycle): ScrewPace | undefined {
  const { delivery } = scenario;
  if (delivery.kind !== "continuous") return undefined;
  const slower = slowedBy(scenario);
  const rate = (extrusionRate(scenario) * TICKS_PER_SECOND) / milligramsPerKilogram;
  const fullParison = fullRateSeconds(scenario);
  const parison = fullParison * slower;
  const isMatched = delivery.moldPace !== undefined && delivery.moldPace <= parison * (1 + 1e-9);
  const turned = slower === 1 ? "full" : isMatched ? "matched" : "slowest";
  return {
    kind: delivery.rate === "fixed" ? "fixed" : turned,
    rate,
    fullRate: rate * slower,
    parison,
    fullParison,
    excess: Math.max(0, rate * (1 - parison / secondsPerShot)),
  };
}
