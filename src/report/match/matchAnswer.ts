// The answer to `match` on one screen: the verdict, what is to blame, what to do, and the measures behind it.
import type { Comparison, LogMatch } from "#analysis/match/logMatch.ts";
import { shareApart, type Verdict } from "#analysis/match/verdict.ts";
import { mostTraced } from "#analysis/match/tracedPart.ts";
import { grouped, percent, plainNumber } from "#report/words/digits.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { differenceText, estimateText, matchFinding, measureName } from "./matchWords.ts";

export interface MatchFinding {
  readonly match: LogMatch;
  readonly verdict: Verdict;
  readonly scenario: Scenario;
  /** How the log was read. */
  readonly words: readonly string[];
}

const mostStations = 4;
const mostWaits = 6;

export function matchAnswer(finding: MatchFinding, width: number): string {
  const { match, verdict, scenario } = finding;
  const waits = topWaits(match.comparisons, scenario);
  return [
    ...matchFinding(match, verdict).flatMap((line) => wrappedLines(line, width)),
    "",
    ...rowsOf("output", outputsOf(match.comparisons), width),
    ...spreadLines(match).flatMap((line) => wrappedLines(line, width)),
    ...(waits.length > 0 ? ["", ...rowsOf("% of the time", waits, width)] : []),
    "",
    ...[...matchNotes(finding), "match.html and match.csv have every measure, with the steps."].flatMap((line) =>
      wrappedLines(line, width),
    ),
    "",
  ].join("\n");
}

function rowsOf(heading: string, comparisons: readonly Comparison[], width: number): readonly string[] {
  const rows = comparisons.map((each) => [
    measureName(each),
    estimateText(each.log, each.measure),
    estimateText(each.model, each.measure),
    differenceText(each.result),
  ]);
  return alignedLines([[heading, "log", "model", "difference"], ...rows], [1, 2], width);
}

function outputsOf(comparisons: readonly Comparison[]): readonly Comparison[] {
  return comparisons
    .filter(({ measure }) => measure === "throughput" || measure === "cycle")
    .slice(0, mostStations + 1);
}

/** Waits of stations of which log and model differ most. */
function topWaits(comparisons: readonly Comparison[], { stations }: Scenario): readonly Comparison[] {
  return comparisons
    .filter(({ measure, resource }) => measure === "wait" && stations.some(({ name }) => name === resource))
    .toSorted((one, other) => shareApart(other) - shareApart(one))
    .slice(0, mostWaits);
}

function spreadLines({ spreads }: LogMatch): readonly string[] {
  return spreads.slice(0, mostStations).map(({ station, log, model }) => {
    const words = ({ p05, p50, p95 }: typeof log): string => [p05, p50, p95].map(plainNumber).join(", ");
    return `Cycles of ${station} in s, 5 %, 50 %, 95 %: log ${words(log)}; model ${words(model)}.`;
  });
}

/** How the numbers came about. */
export function matchNotes({ match, scenario, words }: MatchFinding): readonly string[] {
  const { busiest, comparisons, tracedHours } = match;
  const stations = comparisons.filter(({ measure }) => measure === "cycle").map(({ resource }) => resource);
  const missing = scenario.stations.filter(({ name }) => !stations.includes(name)).map(({ name }) => name);
  return [
    ...(busiest
      ? [
          `Busiest: ${busiest.log.resource} in the log, ${percent(busiest.log.share)} of the time at work; ${busiest.model.resource} in the model, ${percent(busiest.model.share)}.`,
        ]
      : []),
    ...(missing.length > 0 ? [`Not in the log, so not compared: ${missing.join(", ")}.`] : []),
    ...(tracedHours === undefined
      ? []
      : [
          `Of a log above ${grouped(mostTraced)} rows the trace-driven run takes the first part; all other values are of the whole log.`,
        ]),
    ...(scenario.calendar ? ["The calendar of the model is taken to begin with the log."] : []),
    `Columns: ${words.join("; ")}.`,
  ];
}
