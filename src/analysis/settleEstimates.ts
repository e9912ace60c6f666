// Puts computed times where a scenario says `estimate`, or tells which keys they would need.
import type { Issue } from "#foundation/issue.ts";
import { missingRows, processWindow } from "#physics/processWindow.ts";
import type { WindowInput } from "#physics/windowInput.ts";
import { lawMean } from "#engine/law.ts";
import type { EstimatedStep, Scenario, StationSpec } from "#scenario/scenario.ts";
import { ownStepsAfter } from "./ownStepsAfter.ts";
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

/** A day, in seconds: no step of any cycle takes longer. */
const LONGEST = 86_400;

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
  const found = new Map(estimates.map((step) => [step, estimate(station.name, step, input)]));
  const fixed = (value: number) => ({ kind: "fixed", value }) as const;
  const settled = (step: EstimatedStep, meanwhile = 0) => {
    const answer = found.get(step);
    return answer === undefined ? rest[step] : fixed(Math.max(0, (answer.seconds ?? 0) - meanwhile));
  };
  const blow = settled("blow");
  const own = ownStepsAfter(rest.extra, ["blow", "cool"]).reduce((sum, { time }) => sum + lawMean(time), 0);
  const times = { blow, cool: settled("cool", lawMean(blow) + own), vent: settled("vent") };
  return { station: { ...rest, ...times }, issues: [...found.values()].flatMap(({ issue }) => issue ?? []) };
}

interface Answer {
  readonly seconds?: number;
  readonly issue?: Issue;
}

function estimate(station: string, step: EstimatedStep, input: WindowInput | undefined): Answer {
  const quantity = rowOf[step];
  const row = input && processWindow(input).find((each) => each.quantity === quantity);
  if (row) return row.value <= LONGEST ? { seconds: row.value } : { issue: endless(station, step) };
  const missing = input && missingRows(input).find((each) => each.quantity === quantity);
  return { issue: lacking(station, step, missing?.keys ?? ["product.material"]) };
}

function issueOf(station: string, step: EstimatedStep): Pick<Issue, "severity" | "path" | "value" | "fate"> {
  return { severity: "error", path: `stations.${station}.steps.${step}`, value: "estimate", fate: "file" };
}

function lacking(station: string, step: EstimatedStep, keys: readonly string[]): Issue {
  const named = keys.map((key) => `\`${key.replace(/^station\./, `stations.${station}.`)}\``).join(", ");
  return {
    ...issueOf(station, step),
    code: "estimate-inputs-missing",
    message: `The time of ${step} cannot be estimated yet.`,
    expected: `values for ${named}`,
    remedy: `Give ${named}, or the time itself.`,
  };
}

const causes: Readonly<Record<EstimatedStep, string>> = {
  blow: "`product.airSupply` above `product.blowPressure`, and a path for the air in `product.airConductance`",
  cool: "a `moldContact` that takes heat, and `product.demoldTemperature` above `product.moldTemperature`",
  vent: "`product.ventTo` above zero, and a path for the air in `product.airConductance`",
};

function endless(station: string, step: EstimatedStep): Issue {
  return {
    ...issueOf(station, step),
    code: "estimate-endless",
    message: `With these values ${step} would take more than a day, if it ever ended.`,
    expected: causes[step],
    remedy: "Check these values for a slip, or give the time itself.",
  };
}

export const estimateIssueCodes = {
  "estimate-endless": "an estimated time would hardly ever end with the values given",
  "estimate-inputs-missing": "a step's time is to be estimated, but values that it needs are not given",
};
