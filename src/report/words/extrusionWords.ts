// Phrases for continuous extrusion: the screw rate beside the pace of the molds, and the excess melt at mean times.
import { formatQuantity, type UnitSystem } from "#foundation/formatQuantity.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { screwPace, type ScrewPace } from "#analysis/ideal/screwPace.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { percent, seconds } from "./digits.ts";

/** Excess below this share of the melt is not shown. */
const leastExcess = 1e-4;

/** One sentence for continuous extrusion; none for another kind of delivery. */
export function extrusionWords(scenario: Scenario, ideal: IdealCycle, units: UnitSystem = "si"): readonly string[] {
  const pace = screwPace(scenario, ideal);
  if (!pace) return [];
  const rateOf = (rate: number): string => formatQuantity(rate, "rate", { system: units, digits: 3 });
  const every = `a parison in ${seconds(pace.parison)}`;
  const excess = pace.excessShare > leastExcess ? `, excess melt ${excessWords(pace, rateOf)} to regrind` : "";
  const late = `${every}, a mold every ${seconds(ideal.secondsPerShot)}${excess}.`;
  const { rates, fullParison } = pace;
  const now = rates ? `, ${rateOf(rates.now)}` : "";
  switch (pace.kind) {
    case "matched": {
      const turned = rates ? `${rateOf(rates.full)} to ${rateOf(rates.now)}` : `a parison in ${seconds(fullParison)}`;
      return [`The screw is turned down from ${turned} to match the molds: ${every}.`];
    }
    case "slowest":
      return [`The screw runs at its lowest rate${now}: ${late}`];
    case "full":
      return [`The screw runs at its full rate${now}: ${late}`];
    case "fixed":
      return [`The screw runs at a fixed rate${now}: ${late}`];
  }
}

/** "42.4 kg/h"; without masses "37 % of all". */
function excessWords({ excessShare, rates }: ScrewPace, rateOf: (rate: number) => string): string {
  return rates ? rateOf(rates.now * excessShare) : `${percent(excessShare)} of all`;
}

/** The slack at full rate of a screw that was turned down; undefined for any other screw. */
export function matchedSlackWords(scenario: Scenario, ideal: IdealCycle): string | undefined {
  const pace = screwPace(scenario, ideal);
  if (pace?.kind !== "matched") return undefined;
  return `turned down to match; slack ${seconds(ideal.secondsPerShot - pace.fullParison)} a shot at full rate`;
}
