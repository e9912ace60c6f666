// The answer to `check` on one screen: step times, the ideal cycle, what sets it, and how far everything else is from it.
import type { IdealCircuit } from "#analysis/idealCircuit.ts";
import type { IdealCycle } from "#analysis/idealCycle.ts";
import type { StationWindow } from "#analysis/stationWindow.ts";
import type { StepTime } from "#analysis/stepTimes.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { alignedLines } from "./alignedLines.ts";
import { cautions } from "./cautions.ts";
import { plainNumber, seconds } from "./digits.ts";
import { extrusionWords } from "./extrusionWords.ts";
import { idealWords } from "./idealWords.ts";
import { timingLines } from "./timingLines.ts";
import { windowLines } from "./windowWords.ts";

/** Beyond this the eye loses the line. */
const widestChart = 120;

export interface CheckFindings {
  readonly scenario: Scenario;
  readonly times: readonly StepTime[];
  readonly ideal: IdealCycle;
  readonly windows: readonly StationWindow[];
}

/** `width` in columns of the terminal. */
export function checkAnswer(findings: CheckFindings, width = 80): string {
  const { scenario, ideal } = findings;
  return [
    scenario.title,
    "Mean times, in seconds:",
    ...stepLines(findings),
    "",
    `Ideal cycle: ${idealWords(ideal)}`,
    ...alignedLines([["  circuit", "s a shot", "to spare"], ...ideal.circuits.map(circuitRow)], [1]),
    ...extrusionWords(scenario, ideal),
    ...neededWords(ideal, scenario),
    "",
    ...timingLines(ideal, Math.min(width, widestChart)),
    "",
    ...windowLines(findings.windows, scenario.stations.length, width),
    ...cautions,
    "",
  ].join("\n");
}

/** One row a step, one column a station; equal columns are shown once. */
function stepLines({ scenario, times }: CheckFindings): readonly string[] {
  const columns = columnsOf(scenario, times);
  const steps = [...new Set(times.map(({ step }) => step))];
  const rows = steps.map((step) => [`  ${step}`, ...columns.map(({ station }) => timeOf(times, step, station))]);
  return alignedLines(
    [["", ...columns.map(({ heading }) => heading)], ...rows],
    columns.map((_, i) => i + 1),
  );
}

function columnsOf(
  scenario: Scenario,
  times: readonly StepTime[],
): readonly { readonly station: string; readonly heading: string }[] {
  const columns = new Map<string, string[]>();
  for (const { name } of scenario.stations) {
    const own = times.filter(({ station }) => station === name).map(({ step, seconds: time }) => [step, time]);
    const key = JSON.stringify(own);
    columns.set(key, [...(columns.get(key) ?? []), name]);
  }
  return [...columns.values()].map((names) => ({ station: names[0] ?? "", heading: headingOf(names) }));
}

function headingOf(names: readonly string[]): string {
  return names.length > 2 ? `${names.length} stations alike` : names.join(", ");
}

function timeOf(times: readonly StepTime[], step: string, name: string): string {
  const found = times.find((time) => time.step === step && (time.station === name || time.station === null));
  return found ? found.seconds.toFixed(2) : "";
}

function circuitRow({ name, secondsPerShot, slackSeconds, critical }: IdealCircuit): readonly string[] {
  return [`  ${name}`, secondsPerShot.toFixed(2), critical ? "nothing: it sets the cycle" : seconds(slackSeconds)];
}

function neededWords({ stationsNeeded }: IdealCycle, { stations, delivery }: Scenario): readonly string[] {
  if (stationsNeeded === null) return [];
  const count = stations.length;
  const busy = delivery.kind === "continuous" ? "busy at its full rate" : "busy";
  const enough = Math.ceil(stationsNeeded - 1e-9);
  const words = `Stations of this kind that keep the screw ${busy}: ${plainNumber(stationsNeeded)}, so ${enough}`;
  const more = count > enough ? "; a station beyond that covers for stops, it does not add rate" : "";
  return [`${words}; the cell has ${count}${more}.`];
}
