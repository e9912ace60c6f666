// The answer to `fit` on one screen: what was fitted and left out, a row a step, and what to do.
import { keptValues } from "#analysis/fit/series.ts";
import type { Fit, LogFit } from "#analysis/fit/logFit.ts";
import { leftOut, logProblems } from "#analysis/log/logRecord.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { grouped } from "#report/words/digits.ts";
import { fitName, shortText, meanText } from "./fitWords.ts";

const mostRows = 18;
const mostNotes = 6;

export function fitAnswer(fit: LogFit, width: number): string {
  const { fits } = fit;
  const rows = fits.slice(0, mostRows).map(rowOf);
  const rest = fits.length - rows.length;
  const lines = alignedLines([["station", "step", "n", "mean", "distribution"], ...rows], [2], width);
  return [
    ...fitFinding(fit).flatMap((line) => wrappedLines(line, width)),
    "",
    ...lines,
    ...(rest > 0 ? [`${rest} more rows are in fit.csv.`] : []),
    "",
    ...fitNotes(fit).flatMap((line) => wrappedLines(line, width)),
    "",
  ].join("\n");
}

function rowOf(fit: Fit): readonly string[] {
  const { station, summary, suggestion } = fit;
  const distribution = suggestion ? shortText(suggestion.distribution) : "too few times";
  return [station, fitName(fit), grouped(summary.count), meanText(fit), distribution];
}

/** The first sentence is the answer. */
export function fitFinding({ fits, rows, problems }: LogFit): readonly string[] {
  const stations = new Set(fits.map(({ station }) => station)).size;
  const steps = fits.filter(({ kind }) => kind === "step").length;
  const stops = fits.filter(({ kind }) => kind === "repair").length;
  const out = leftOut(problems);
  const parts = [counted(steps, "step"), ...(stops > 0 ? [counted(stops, "stop")] : [])].join(" and ");
  const verb = steps + stops === 1 ? "is" : "are";
  const rest = out === 0 ? "no row is left out" : `${counted(out, "row")} ${out === 1 ? "is" : "are"} left out`;
  return [`${parts} of ${counted(stations, "station")} ${verb} fitted from ${counted(rows, "row")}; ${rest}.`];
}

/** Warnings of the series, then how the numbers came about, and what to do. */
export function fitNotes({ fits, waits, words, problems }: LogFit): readonly string[] {
  const warnings = fits.flatMap((fit) =>
    fit.summary.warnings.map((line) => `${fit.station}, ${fitName(fit)}: ${line}.`),
  );
  const shown = warnings.slice(0, mostNotes);
  const isSampled = fits.some(({ summary }) => summary.count > keptValues);
  const kinds = new Set(problems.map(({ problem }) => logProblems[problem])).size;
  return [
    ...shown,
    ...(warnings.length > shown.length ? [`${warnings.length - shown.length} more warnings are in fit.html.`] : []),
    ...(kinds > 0 ? ["The warnings above name what is wrong with rows, how often and where first."] : []),
    ...(waits > 0
      ? [`${counted(waits, "wait")} ${waits === 1 ? "is" : "are"} not fitted: waits are results of the cell.`]
      : []),
    ...(isSampled
      ? [`Above ${grouped(keptValues)} values a random sample of so many is fitted; n, mean and sd are of all.`]
      : []),
    `Columns: ${words.join("; ")}.`,
    "fit.html shows each fit; --into FILE writes the distributions into a scenario.",
  ];
}

function counted(count: number, noun: string): string {
  return `${grouped(count)} ${noun}${count === 1 ? "" : "s"}`;
}
