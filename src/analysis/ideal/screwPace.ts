// What becomes of a screw that never stops: how fast it turns beside the molds, and what they leave to regrind.
import { extrusionRate, fullRateSeconds, slowedBy } from "#cell/delivery/continuousExtrusion.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "./idealCycle.ts";

export interface ScrewPace {
  /** `matched`: turned down to the molds; `slowest`: as far as it goes; `full`: the molds could take more; `fixed`: not to be turned. */
  readonly kind: "matched" | "slowest" | "full" | "fixed";
  /** kg/s, now and at most. */
  readonly rate: number;
  readonly fullRate: number;
  /** Mean seconds of a parison, now and at full rate. */
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
