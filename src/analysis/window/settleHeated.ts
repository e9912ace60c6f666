// Estimated times of molds that get hotter with the rate: the rate decides the times, and the times decide the rate.
import { rootBetween } from "#physics/numeric/rootBetween.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { matchScrew } from "#analysis/ideal/matchScrew.ts";
import { meltByStation } from "./meltByStation.ts";
import { settleEstimates, type Estimated } from "./settleEstimates.ts";

/** At the melt rate that the settled cell has; any other scenario is settled at once. */
export function settleHeated(scenario: Scenario): Estimated {
  const cold = settleEstimates(scenario);
  const isHeated = scenario.stations.some(
    ({ estimates, process }) => estimates !== undefined && process?.values["station.moldResistance"] !== undefined,
  );
  const fastest = isHeated && cold.findings.length === 0 ? flowOf(cold.scenario) : undefined;
  if (fastest === undefined) return cold;
  const at = (total: number): Estimated =>
    settleEstimates(scenario, new Map([...fastest.shares].map(([name, share]) => [name, share * total])));
  /** A cell whose molds cannot cool at this rate makes nothing. */
  const shortfall = (total: number): number => {
    const { scenario: settled, findings } = at(total);
    return total - (findings.length > 0 ? 0 : (flowOf(settled)?.total ?? 0));
  };
  return at(rootBetween(shortfall, 0, fastest.total * (1 + MARGIN)));
}

/** The upper end lies just above the rate of cold molds. */
const MARGIN = 1e-6;

function flowOf(settled: Scenario): ReturnType<typeof meltByStation> {
  const matched = matchScrew(settled);
  return meltByStation(matched, idealCycle(matched));
}
