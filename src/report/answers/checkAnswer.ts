// The answer to `check` on one screen: the ideal cycle and what sets it, then step times, circuits and the process window.
import { hasSlack, passesScrew, slackPerShot, type IdealCircuit } from "#analysis/ideal/idealCircuit.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import type { StationRanges } from "#analysis/window/stationRanges.ts";
import type { StationWindow } from "#analysis/window/stationWindow.ts";
import type { StepTime } from "#analysis/ideal/stepTimes.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import { formatQuantity, type UnitSystem } from "#foundation/formatQuantity.ts";
import type { Scenario, ServerSpec } from "#scenario/scenario.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { grouped, plainNumber, seconds } from "#report/words/digits.ts";
import { coolingRangeLines } from "#report/words/coolingRangeWords.ts";
import { extrusionWords, matchedSlackWords } from "#report/words/extrusionWords.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { idealSentence } from "#report/words/idealWords.ts";
import { namesOf, ownerName, screenName } from "#report/words/tradeWords.ts";
import { timingLines } from "./timingLines.ts";
import { windowLines } from "#report/tables/windowWords.ts";

/** A wider chart is hard to read line by line. */
const widestChart = 120;

export interface CheckFindings {
  readonly scenario: Scenario;
  readonly times: readonly StepTime[];
  readonly ideal: IdealCycle;
  readonly windows: readonly StationWindow[];
  /** Empty where they are not asked for. */
  readonly ranges?: readonly StationRanges[];
}

/** `width` in columns of the terminal. */
export function checkAnswer(findings: CheckFindings, width = 80, units: UnitSystem = "si"): string {
  const { scenario, ideal } = findings;
  const wrapped = (said: string): readonly string[] => wrappedLines(said, width);
  return [
    ...wrapped(scenario.title),
    ...wrapped(paceSentence(findings)),
    "",
    "Mean times in seconds:",
    ...stepLines(findings),
    ...takeawayLines(findings, width),
    "",
    ...circuitLines(ideal, width),
    ...[...noSlackWords(ideal), ...extrusionWords(scenario, ideal, units), ...neededWords(ideal, scenario)].flatMap(
      wrapped,
    ),
    "",
    ...timingLines(ideal, Math.min(width, widestChart)),
    "",
    ...windowLines(findings.windows, scenario.stations.length, width, units),
    ...coolingRangeLines(findings.ranges ?? [], scenario.stations.length, width, units),
    ...leftOutWords(scenario).flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}

/** Seconds a shot; less is shown as 0.00. */
const leastSlack = 0.005;

/** A circuit through several resources is named after them. */
function circuitName({ name }: IdealCircuit): string {
  const owner = ownerName(name);
  return owner === name ? screenName(name) : owner;
}

/** "The ideal cycle is 6.05 s a shot, 1,190 parts an hour; each station sets the pace, next the screw, slack 0.94 s a shot." */
export function paceSentence({ scenario, ideal }: Pick<CheckFindings, "scenario" | "ideal">): string {
  const [first, ...others] = ideal.circuits;
  const cavities = new Set(scenario.stations.map((station) => station.cavities));
  const [alike] = cavities;
  const rate =
    cavities.size === 1 ? `, ${grouped(Math.round((3600 / ideal.secondsPerShot) * alike!))} parts an hour` : "";
  // A matched screw is 1 µs faster than the molds: both set the pace.
  const isTied = (circuit: IdealCircuit): boolean =>
    circuit.critical || (hasSlack(ideal) && slackPerShot(circuit, ideal) < leastSlack);
  const tied = others.filter(isTied);
  const next = others.find((circuit) => !isTied(circuit));
  const matched = next && passesScrew(next) ? matchedSlackWords(scenario, ideal) : undefined;
  const slack = next && hasSlack(ideal) ? `slack ${seconds(slackPerShot(next, ideal))} a shot` : undefined;
  const after = next ? [`; next ${circuitName(next)}`, matched ?? slack ?? []].flat().join(", ") : "";
  const sets = tied.length === 0 ? "sets" : "set";
  const pace = first ? `; ${namesOf([first, ...tied].map(circuitName), "circuits")} ${sets} the pace${after}` : "";
  return `${idealSentence(ideal)}${rate}${pace}.`;
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

/** One row a server. */
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
    "After the mold, per part:",
    ...alignedLines([["", "seconds", "places", "buffer", ""], ...rows], [1, 2, 3], width),
  ];
}

function remarks({ by, rejects, minAge, maxAge }: ServerSpec): string {
  const time = (value: number): string => formatQuantity(value, "time");
  return [
    ...(by === "operator" ? ["by operator"] : []),
    ...(rejects > 0 ? [`rejects ${formatQuantity(rejects, "share")}`] : []),
    ...(minAge === undefined ? [] : [`age at least ${time(minAge)}`]),
    ...(maxAge === undefined ? [] : [`age at most ${time(maxAge)}`]),
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
  return names.length > 2 ? `${names.length} identical stations` : names.join(", ");
}

function timeOf(times: readonly StepTime[], step: string, name: string): string {
  const found = times.find((time) => time.step === step && (time.station === name || time.station === null));
  return found ? found.seconds.toFixed(2) : "";
}

function circuitLines(ideal: IdealCycle, width: number): readonly string[] {
  const heading = hasSlack(ideal) ? "slack, s a shot" : "";
  const rows = ideal.circuits.map((circuit) => {
    const slack = hasSlack(ideal) ? slackPerShot(circuit, ideal).toFixed(2) : "";
    const name = `  ${screenName(circuit.name)}`;
    return [name, circuit.secondsPerShot.toFixed(2), circuit.critical ? paceRemark(ideal) : slack];
  });
  return alignedLines([["  circuit", "s a shot", heading], ...rows], hasSlack(ideal) ? [1, 2] : [1], width);
}

const paceRemark = (ideal: IdealCycle): string => (hasSlack(ideal) ? "0: sets the pace" : "sets the pace");

function noSlackWords(ideal: IdealCycle): readonly string[] {
  if (hasSlack(ideal)) return [];
  return [
    "No slack is given: the order of service is not fixed. `blowcell run --slack` tests how far a step may grow.",
  ];
}

function neededWords({ stationsNeeded }: IdealCycle, { stations, delivery }: Scenario): readonly string[] {
  if (stationsNeeded === null) return [];
  const count = stations.length;
  const busy = delivery.kind === "continuous" ? "busy at its full rate" : "busy";
  const enough = Math.ceil(stationsNeeded - 1e-9);
  const words = `Stations of this kind that keep the screw ${busy}: ${plainNumber(stationsNeeded)}, in practice ${enough}`;
  const more = count > enough ? "; a further station covers for stops and adds no rate" : "";
  return [`${words}; the cell has ${count}${more}.`];
}
