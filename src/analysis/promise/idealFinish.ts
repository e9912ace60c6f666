// The time that an order takes at the ideal cycle, through the work shifts: a first estimate, and the proof that it takes years.
import { distributionMean } from "#engine/distributions/moments.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { cellRunTime } from "#analysis/indicators/kpiRows.ts";
import { calendarOver } from "#scenario/resolving/resolveCalendar.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Campaign, Order } from "./order.ts";

export const SECONDS_OF_WEEK = 604_800;
/** A run that is longer is no order: 2 years. */
export const longestRun = 105 * SECONDS_OF_WEEK;

/** Seconds for one good part of the whole cell at the ideal cycle, where no part is a reject. */
export function secondsAPart(scenario: Scenario): number {
  return cellRunTime(scenario, idealCycle(scenario));
}

/** Seconds of running time for the parts of a campaign. */
export function runningSeconds({ scenario, quantities }: Campaign): number {
  const all = scenario.stations.reduce((sum, { cavities }) => sum + cavities, 0);
  const times = quantities.map(({ product, quantity }) => {
    const makers = scenario.stations.filter((station) => product === null || station.product === product);
    const own = makers.reduce((sum, { cavities }) => sum + cavities, 0);
    return (quantity * all) / own;
  });
  return secondsAPart(scenario) * Math.max(...times);
}

/** Seconds from the start of the order; Infinity where it takes longer than the longest run. */
export function idealFinish({ campaigns }: Pick<Order, "campaigns">): number {
  const running = campaigns.reduce(
    (sum, campaign) => sum + runningSeconds(campaign) + (campaign.change ? distributionMean(campaign.change.time) : 0),
    0,
  );
  const [first] = campaigns;
  return afterRunning(first!.scenario, running);
}

/** The time at which the cell has been on shift so many seconds. */
function afterRunning({ calendar, operators }: Scenario, running: number): number {
  if (running > longestRun) return Infinity;
  if (!calendar) return running;
  let left = running;
  let last = 0;
  for (const { from, until } of calendarOver(calendar, operators, longestRun).off) {
    if (left <= from - last) break;
    left -= from - last;
    last = until;
  }
  return last + left < longestRun ? last + left : Infinity;
}
