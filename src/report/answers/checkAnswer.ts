// The answer to `check` on one screen: step times, the ideal cycle, what sets it, and how far everything else is from it.
import type { IdealCircuit } from "#analysis/ideal/idealCircuit.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import type { StationWindow } from "#analysis/window/stationWindow.ts";
import type { StepTime } from "#analysis/ideal/stepTimes.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Scenario, ServerSpec } from "#scenario/scenario.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { cautions } from "#report/words/cautions.ts";
import { plainNumber, seconds } from "#report/words/digits.ts";
import { extrusionWords } from "#report/words/extrusionWords.ts";
import { idealWords } from "#report/words/idealWords.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { timingLines } from "./timingLines.ts";
import { windowLines } from "#report/tables/windowWords.ts";

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
    ...wrappedLines(scenario.title, width),
    "Mean times, in seconds:",
    ...stepLines(findings),
    ...takeawayLines(findings, width),
    "",
    ...wrappedLines(`Ideal cycle: ${idealWords(ideal)}`, width),
    ...alignedLines([["  circuit", "s a shot", "to spare"], ...ideal.circuits.map(circuitRow)], [1], width),
    ...[...extrusionWords(scenario, ideal), ...neededWords(ideal, scenario)].flatMap((said) =>
      wrappedLines(said, width),
    ),
    "",
    ...timingLines(ideal, Math.min(width, widestChart)),
    "",
    ...windowLines(findings.windows, scenario.stations.length, width),
    ...leftOutWords(scenario).flatMap((said) => wrappedLines(said, width)),
    ...cautions,
    "",
  ].join("\n");
}

/** One row a step, one column a station; equal columns are shown once. */
function stepLines({ scenario, times: all }: CheckFindings): readonly string[] {
  const servers = takeawayGroups(scenario).map(({ name }) => name);
  const times = all.filter(({ resource }) => !servers.includes(resource));
  const columns = columnsOf(scenario, times);
  const steps = [...new Set(times.map(({ step }) => step))];
  const rows = steps.map((step) => [`  ${step}`, ...columns.map(({ station }) => timeOf(times, step, station))]);
  return alignedLines(
    [["", ...columns.map(({ heading }) => heading)], ...rows],
    columns.map((_, i) => i + 1),
  );
}

/** One row a server; those of each station's own are alike. */
function takeawayLines({ scenario, times }: CheckFindings, width: number): readonly string[] {
  const { takeaway = [] } = scenario;
  if (takeaway.length === 0) return [];
  const groups = takeawayGroups(scenario);
  const rows = takeaway.map((server) => {
    const own = groups.find((group) => group.server === server)?.name;
    const work = times.find(({ resource, step }) => resource === own && step === server.name)?.seconds ?? 0;
    const where = server.perStation === true ? `${server.name}, each station` : server.name;
    return [`  ${where}`, work.toFixed(2), String(server.places), String(server.buffer), remarks(server)];
  });
  return [
    "After the mold, a part:",
    ...alignedLines([["", "seconds", "places", "buffer", ""], ...rows], [1, 2, 3], width),
  ];
}

function remarks({ by, rejects, minAge, maxAge }: ServerSpec): string {
  const time = (value: number): string => formatQuantity(value, "time");
  return [
    ...(by === "operator" ? ["by operator"] : []),
    ...(rejects > 0 ? [`refuses ${formatQuantity(rejects, "share")}`] : []),
    ...(minAge === undefined ? [] : [`not before ${time(minAge)} of age`]),
    ...(maxAge === undefined ? [] : [`not after ${time(maxAge)} of age`]),
  ].join(", ");
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
