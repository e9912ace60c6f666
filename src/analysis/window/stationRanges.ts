// The cooling time of each station over the ranges of the material's values.
import { coolingRanges, type CoolingRange } from "#physics/window/coolingRange.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { stationInputs } from "./stationWindow.ts";

export interface StationRanges {
  /** Stations with the same window. */
  readonly stations: readonly string[];
  readonly ranges: readonly CoolingRange[];
}

/** Empty where no cooling time can be computed. */
export function stationRanges(scenario: Scenario, ideal: IdealCycle): readonly StationRanges[] {
  return stationInputs(scenario, ideal)
    .map(({ stations, input }) => ({ stations, ranges: coolingRanges(input) }))
    .filter(({ ranges }) => ranges.length > 0);
}
