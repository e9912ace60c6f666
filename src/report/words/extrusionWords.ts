// Says how a screw that never stops keeps step with the molds, and what goes to regrind at mean times.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { screwPace, type ScrewPace } from "#analysis/ideal/screwPace.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { percent, seconds } from "./digits.ts";

/** Less than this share of what is extruded is nothing that anybody could weigh. */
const leastExcess = 1e-4;

/** One sentence; none for another kind of delivery. */
export function extrusionWords(scenario: Scenario, ideal: IdealCycle): readonly string[] {
  const pace = screwPace(scenario, ideal);
  if (!pace) return [];
  const every = `a parison in ${seconds(pace.parison)}`;
  const excess = pace.excessShare > leastExcess ? `, so that ${excessWords(pace)} go to regrind` : "";
  const late = `${every}, a mold every ${seconds(ideal.secondsPerShot)}${excess}.`;
  const { rates, fullParison } = pace;
  const now = rates && kilograms(rates.now);
  switch (pace.kind) {
    case "matched":
      return rates
        ? [`The screw is turned down from ${kilograms(rates.full)} to ${now}: ${every}, as the molds come.`]
        : [`The screw is turned down from a parison in ${seconds(fullParison)} to ${every}, as the molds come.`];
    case "slowest":
      return [`The screw is turned down to ${now} and goes no slower: ${late}`];
    case "full":
      return [`The screw turns at its full ${now ?? "rate"}: ${late}`];
    case "fixed":
      return [`The screw makes ${now ?? "as much"} whatever the molds take: ${late}`];
  }
}

function kilograms(rate: number): string {
  return formatQuantity(rate, "rate", { digits: 3 });
}

function excessWords({ excessShare, rates }: ScrewPace): string {
  return rates ? kilograms(rates.now * excessShare) : `${percent(excessShare)} of the melt`;
}

/** Of a screw that was turned down, what it has in hand; undefined where that is not so. */
export function inHandWords(scenario: Scenario, ideal: IdealCycle): string | undefined {
  const pace = screwPace(scenario, ideal);
  if (pace?.kind !== "matched") return undefined;
  return `turned down to keep step; at full rate ${seconds(ideal.secondsPerShot - pace.fullParison)} away`;
}
