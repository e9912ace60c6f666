// Puts computed times where a scenario says `estimate`, or tells which keys they would need.
import type { Issue } from "#foundation/issue.ts";
import { missingRows, processWindow } from "#physics/processWindow.ts";
import type { EstimatedStep, Scenario, StationSpec } from "#scenario/scenario.ts";
import { lawMean } from "#engine/law.ts";
import { stepInput } from "./stationWindow.ts";

export interface Estimated {
  readonly scenario: Scenario;
  readonly issues: readonly Issue[];
}

/** The row of the process window that gives each step's time: the slower bound of filling and emptying, the thickest place of cooling. */
const rowOf: Readonly<Record<EstimatedStep, string>> = {
  blow: "fill time, isothermal",
  cool: "cooling time of the thickest place to its inside face",
  vent: "vent time, isothermal",
};

/** Part of the time that the wall cools is the blow: the cool step takes the rest. All that is missing is told at once. */
export function settleEstimates(scenario: Scenario): Estimated {
  const settled = scenario.stations.map(settleStation);
  const issues = settled.flatMap((each) => each.issues);
  return { scenario: { ...scenario, stations: settled.map(({ station }) => station) }, issues };
}

function settleStation(station: StationSpec): { readonly station: StationSpec; readonly issues: readonly Issue[] } {
  const { estimates = [], ...rest } = station;
  if (estimates.length === 0) return { station, issues: [] };
  const input = stepInput(rest, () => 0, 0);
  const rows = input ? processWindow(input) : [];
  const missing = input ? missingRows(input) : [];
  const issues: Issue[] = [];
  const seconds = (step: EstimatedStep): number => {
    const row = rows.find(({ quantity }) => quantity === rowOf[step]);
    if (!row)
      issues.push(
        lacking(
          station.name,
          step,
          missing.find(({ quantity }) => quantity === rowOf[step])?.keys ?? ["product.material"],
        ),
      );
    return row?.value ?? 0;
  };
  const isOpen = (step: EstimatedStep): boolean => estimates.includes(step);
  const fixed = (value: number) => ({ kind: "fixed", value }) as const;
  const blow = isOpen("blow") ? fixed(seconds("blow")) : rest.blow;
  const cool = isOpen("cool") ? fixed(Math.max(0, seconds("cool") - lawMean(blow))) : rest.cool;
  const vent = isOpen("vent") ? fixed(seconds("vent")) : rest.vent;
  return { station: { ...rest, blow, cool, vent }, issues };
}

function lacking(station: string, step: EstimatedStep, keys: readonly string[]): Issue {
  const named = keys.map((key) => `\`${key.replace(/^station\./, `stations.${station}.`)}\``).join(", ");
  return {
    code: "estimate-inputs-missing",
    severity: "error",
    path: `stations.${station}.steps.${step}`,
    message: `The time of ${step} cannot be estimated yet.`,
    value: "estimate",
    expected: `values for ${named}`,
    remedy: `Give ${named}, or the time itself.`,
    fate: "file",
  };
}

export const estimateIssueCodes = {
  "estimate-inputs-missing": "a step's time is to be estimated, but values that it needs are not given",
};
