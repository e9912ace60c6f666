// Sets the rate of a matched screw to the pace of the rest of the cell at mean times.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { idealCycle } from "./idealCycle.ts";

/** Any other scenario stays as it is. */
export function matchScrew(scenario: Scenario): Scenario {
  const { delivery } = scenario;
  if (delivery.kind !== "continuous" || delivery.rate === "fixed") return scenario;
  const { moldPace: _, ...atFullRate } = delivery;
  const { periodTicks, shotsPerPeriod } = idealCycle({ ...scenario, delivery: atFullRate });
  // 1 µs faster than the molds, so that the molds set the pace.
  const ticks = Math.ceil(periodTicks / shotsPerPeriod) - 1;
  return { ...scenario, delivery: { ...atFullRate, moldPace: ticks / TICKS_PER_SECOND } };
}
