// Reads a scenario, computes its estimated times and sets the rate of a matched screw.
import { readPlaced, type ReadOptions, type ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { matchScrew } from "#analysis/ideal/matchScrew.ts";
import { settleHeated } from "#analysis/window/settleHeated.ts";

/** Never throws. A time that cannot be estimated is an issue, and then there is no scenario. */
export function readSettled(text: string, options: ReadOptions): ScenarioReading {
  const { scenario: read, issues, assumed, toIssue } = readPlaced(text, options);
  if (!read || !toIssue) return { issues, assumed };
  const settled = settleHeated(read);
  if (settled.findings.length > 0) return { issues: [...issues, ...settled.findings.map(toIssue)], assumed: [] };
  return { scenario: matchScrew(settled.scenario), issues, assumed };
}
