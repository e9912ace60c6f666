// Puts computed times where a scenario says `estimate`, or tells which keys they would need.
import { missingRows, processWindow } from "#physics/window/processWindow.ts";
import type { WindowInput } from "#physics/window/windowInput.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import type { Finding } from "#scenario/values/finding.ts";
import type { EstimatesSpec, EstimatedStep, Scenario, StationSpec } from "#scenario/scenario.ts";
import { ownStepsAfter } from "#cell/table/ownStepsAfter.ts";
import { stepInput } from "./stationWindow.ts";

export interface Estimated {
  readonly scenario: Scenario;
  /** Each once, however many stations share the lines of the text that it is about. */
  readonly findings: readonly Finding[];
}

/** A day, in seconds: no step of any cycle takes longer. */
const LONGEST = 86_400;

/** Part of the time that the wall cools is the blow: the cool step takes the rest. All missing keys are reported together. */
export function settleEstimates(scenario: Scenario): Estimated {
  const settled = scenario.stations.map(settleStation);
  const findings = new Map(settled.flatMap((each) => each.findings).map((each) => [JSON.stringify(each), each]));
  return {
    scenario: { ...scenario, stations: settled.map(({ station }) => station) },
    findings: [...findings.values()],
  };
}

interface Settled {
  readonly station: StationSpec;
  readonly findings: readonly Finding[];
}

function settleStation(station: StationSpec): Settled {
  const { estimates, ...rest } = station;
  if (estimates === undefined) return { station, findings: [] };
  const input = stepInput(rest, () => 0, { throughput: 0 });
  const found = new Map(estimates.steps.map((step) => [step, estimate(rest, step, estimates, input)]));
  const fixed = (value: number) => ({ kind: "fixed", value }) as const;
  const settled = (step: EstimatedStep, meanwhile = 0) => {
    const answer = found.get(step);
    return answer === undefined ? rest[step] : fixed(Math.max(0, (answer.seconds ?? 0) - meanwhile));
  };
  const blow = settled("blow");
  const own = ownStepsAfter(rest.extra, ["mold.blow", "mold.cool"]).reduce(
    (sum, { time }) => sum + distributionMean(time),
    0,
  );
  const times = { blow, cool: settled("cool", distributionMean(blow) + own), vent: settled("vent") };
  return {
    station: { ...rest, ...times, estimated: estimates.steps },
    findings: [...found.values()].flatMap(({ finding }) => finding ?? []),
  };
}

interface Answer {
  readonly seconds?: number;
  readonly finding?: Finding;
}

/** The row of the process window that gives the step's time: the slower bound of filling and emptying, the thickest place of cooling. */
function estimate(
  station: Pick<StationSpec, "product">,
  step: EstimatedStep,
  { path }: EstimatesSpec,
  input: WindowInput | undefined,
): Answer {
  const at = { path: [...path, "steps", step], value: "estimate" } as const;
  const row = input && processWindow(input).find((each) => each.estimates === step);
  if (row) return row.value <= LONGEST ? { seconds: row.value } : { finding: { ...at, ...endless(step) } };
  const missing = input && missingRows(input).find((each) => each.estimates === step);
  return { finding: { ...at, ...lacking(station, step, missing?.keys ?? ["product.material"]) } };
}

type Told = Pick<Finding, "code" | "message" | "expected" | "remedy">;

function lacking({ product }: Pick<StationSpec, "product">, step: EstimatedStep, keys: readonly string[]): Told {
  // Several products stand by name; the only one is called so itself.
  const home = product === "product" ? "product" : `products.${product}`;
  const named = keys.map((key) => `\`${key.replace(/^product(?=\.)/u, home)}\``).join(", ");
  return {
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

function endless(step: EstimatedStep): Told {
  return {
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
