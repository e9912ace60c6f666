// Says how a screw that never stops keeps step with the molds, and what goes to regrind at mean times.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { screwPace } from "#analysis/ideal/screwPace.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { seconds } from "./digits.ts";

/** Less than this share of what is extruded is nothing that anybody could weigh. */
const leastExcess = 1e-4;

/** One sentence; none for another kind of delivery. */
export function extrusionWords(scenario: Scenario, ideal: IdealCycle): readonly string[] {
  const pace = screwPace(scenario, ideal);
  if (!pace) return [];
  const kilograms = (rate: number): string => formatQuantity(rate, "rate", { digits: 3 });
  const every = `a parison in ${seconds(pace.parison)}`;
  const excess = pace.excess > leastExcess * pace.rate ? `, so that ${kilograms(pace.excess)} go to regrind` : "";
  const late = `${every}, a mold every ${seconds(ideal.secondsPerShot)}${excess}.`;
  switch (pace.kind) {
    case "matched":
      return [
        `The screw is turned down from ${kilograms(pace.fullRate)} to ${kilograms(pace.rate)}: ${every}, as the molds come.`,
      ];
    case "slowest":
      return [`The screw is turned down to ${kilograms(pace.rate)} and goes no slower: ${late}`];
    case "full":
      return [`The screw turns at its full ${kilograms(pace.rate)}: ${late}`];
    case "fixed":
      return [`The screw makes ${kilograms(pace.rate)} whatever the molds take: ${late}`];
  }
}

/** Of a screw that was turned down, what it has in hand; undefined where that is not so. */
export function inHandWords(scenario: Scenario, ideal: IdealCycle): string | undefined {
  const pace = screwPace(scenario, ideal);
  if (pace?.kind !== "matched") return undefined;
  return `turned down to keep step; at full rate ${seconds(ideal.secondsPerShot - pace.fullParison)} away`;
}
