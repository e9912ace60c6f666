// Turns a matched screw down to the pace that everything else in the cell keeps at mean times.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { idealCycle } from "./idealCycle.ts";

/** Any other scenario is left as it is. */
export function matchScrew(scenario: Scenario): Scenario {
  const { delivery } = scenario;
  if (delivery.kind !== "continuous" || delivery.rate === "fixed") return scenario;
  const { moldPace: _, ...atFullRate } = delivery;
  const { periodTicks, shotsPerPeriod } = idealCycle({ ...scenario, delivery: atFullRate });
  // A tick ahead, so that of the two it is the molds that are seen to set the pace.
  const ticks = Math.ceil(periodTicks / shotsPerPeriod) - 1;
  return { ...scenario, delivery: { ...atFullRate, moldPace: ticks / TICKS_PER_SECOND } };
}
