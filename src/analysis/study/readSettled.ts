// From a scenario's text to a Scenario that can be run: read, with the times that it leaves to the process window, and a screw that keeps step.
import { readPlaced, type ReadOptions, type ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { matchScrew } from "#analysis/ideal/matchScrew.ts";
import { settleEstimates } from "#analysis/window/settleEstimates.ts";

/** Never throws; a time that cannot be estimated is an issue like any other, and then there is no scenario. */
export function readSettled(text: string, options: ReadOptions): ScenarioReading {
  const { scenario: read, issues, assumed, toIssue } = readPlaced(text, options);
  if (!read || !toIssue) return { issues, assumed };
  const settled = settleEstimates(read);
  if (settled.findings.length > 0) return { issues: [...issues, ...settled.findings.map(toIssue)], assumed: [] };
  return { scenario: matchScrew(settled.scenario), issues, assumed };
}
