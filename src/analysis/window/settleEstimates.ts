// Replaces `estimate` in a scenario by computed times, or lists the missing keys.
import { missingRows, processWindow } from "#physics/window/processWindow.ts";
import { inflationTime } from "#physics/window/inflation.ts";
import { shortestSteps } from "#physics/window/shortestSteps.ts";
import { completeInput, type WindowInput } from "#physics/window/windowInput.ts";
import type { IssueMeaning } from "#foundation/issue.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import type { Finding } from "#scenario/values/finding.ts";
import type { EstimatesSpec, EstimatedStep, Scenario, StationSpec } from "#scenario/scenario.ts";
import { ownStepsAfter } from "#cell/table/ownStepsAfter.ts";
import { productHome } from "./missingMass.ts";
import { stepInput } from "./stationWindow.ts";

export interface Estimated {
  readonly scenario: Scenario;
  /** Each once, also where several stations share the lines of the text. */
  readonly findings: readonly Finding[];
}

/** A day in seconds, the limit of an estimated time. */
const LONGEST = 86_400;

/** The wall cools from the end of inflation, so the cool step takes what the blow leaves of the cooling time. All missing keys are reported together. */
export function settleEstimates(scenario: Scenario, melt: MeltRates = new Map()): Estimated {
  const settled = scenario.stations.map((station) => settleStation(station, melt));
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

/** kg/s through each station, for molds that get hotter with it; a station that is absent is cold. */
type MeltRates = ReadonlyMap<string, number>;

function settleStation(station: StationSpec, melt: MeltRates): Settled {
  const { estimates, ...rest } = station;
  if (estimates === undefined) return { station, findings: [] };
  const input = stepInput(rest, () => 0, { throughput: 0, own: melt.get(station.name) ?? 0 });
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
  const seconds = distributionMean(blow);
  const inContact = input ? seconds - inflationTime(completeInput({ ...input, "station.steps.blow": seconds })) : 0;
  const times = { blow, cool: settled("cool", inContact + own), vent: settled("vent") };
  return {
    station: { ...rest, ...times, estimated: estimates.steps },
    findings: [...found.values()].flatMap(({ finding }) => finding ?? []),
  };
}

interface Answer {
  readonly seconds?: number;
  readonly finding?: Finding;
}

/**
 * The time from the process window: the air's delay and the slower bound of fill or vent, never below the shortest usual step, or the
 * cooling time of the thickest place.
 */
function estimate(
  station: Pick<StationSpec, "product">,
  step: EstimatedStep,
  { path }: EstimatesSpec,
  input: WindowInput | undefined,
): Answer {
  const at = { path: [...path, "steps", step], value: "estimate" } as const;
  const row = input && processWindow(input).find((each) => each.estimates === step);
  const delay = input && step !== "cool" ? completeInput(input)["station.airDelay"] : 0;
  if (row)
    return row.value <= LONGEST
      ? { seconds: Math.max(shortestSteps[step], delay + row.value) }
      : { finding: { ...at, ...endless(step) } };
  const missing = input && missingRows(input).find((each) => each.estimates === step);
  return { finding: { ...at, ...lacking(station, step, missing?.keys ?? ["product.material"]) } };
}

type FindingText = Pick<Finding, "code" | "message" | "expected" | "remedy">;

function lacking(station: Pick<StationSpec, "product">, step: EstimatedStep, keys: readonly string[]): FindingText {
  const home = productHome(station);
  const named = keys.map((key) => `\`${key.replace(/^product(?=\.)/u, home)}\``).join(", ");
  return {
    code: "estimate-inputs-missing",
    message: `The time of ${step} cannot be estimated.`,
    expected: `values for ${named}`,
    remedy: `Give ${named}, or the time itself.`,
  };
}

const causes: Readonly<Record<EstimatedStep, string>> = {
  blow: "`product.airSupply` above `product.blowPressure`, and a path for the air in `product.airConductance`",
  cool: "a `moldContact` that takes heat, and `product.demoldTemperature` above `product.moldTemperature`",
  vent: "`product.ventTo` above zero, and a path for the air in `product.airConductance`",
};

function endless(step: EstimatedStep): FindingText {
  return {
    code: "estimate-endless",
    message: `With these values ${step} takes more than a day.`,
    expected: causes[step],
    remedy: "Check these values for a typing error, or give the time itself.",
  };
}

export const estimateIssueCodes = {
  "estimate-endless": [
    "an estimated time exceeds a day with the given values",
    "Check the values that the message names, or give the time itself.",
  ],
  "estimate-inputs-missing": [
    "a step's time is `estimate`, but values that it needs are not given",
    "Give the keys that the message names, or the time itself.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;
