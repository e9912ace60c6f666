// The answer to `fit` on one screen: what was fitted and left out, a row a step, and what to do.
import { fewestValues, leastValues } from "#analysis/fit/candidates.ts";
import { keptValues } from "#analysis/fit/series.ts";
import type { Fit, LogFit } from "#analysis/fit/logFit.ts";
import { leftOut, logProblems } from "#analysis/log/logRecord.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { grouped } from "#report/words/digits.ts";
import { fitName, shortText, meanText } from "./fitWords.ts";

const mostRows = 18;
const mostNotes = 6;
const nextStep = "fit.html shows each fit; --into FILE writes the distributions into a scenario.";

export function fitAnswer(fit: LogFit, width: number): string {
  const { fits } = fit;
  const rows = fits.slice(0, mostRows).map(fitRow);
  const rest = fits.length - rows.length;
  const lines = alignedLines([fitHeadings, ...rows], [2], width);
  return [
    ...fitFinding(fit).flatMap((line) => wrappedLines(line, width)),
    "",
    ...lines,
    ...(rest > 0 ? [`${rest} more rows are in fit.csv.`] : []),
    "",
    ...[...fitNotes(fit), nextStep].flatMap((line) => wrappedLines(line, width)),
    "",
  ].join("\n");
}

export const fitHeadings = ["station", "step", "n", "mean", "distribution"];

export function fitRow(fit: Fit): readonly string[] {
  const { station, summary, suggestion } = fit;
  const distribution = suggestion ? shortText(suggestion.distribution) : "too few times";
  return [station, fitName(fit), grouped(summary.count), meanText(fit), distribution];
}

/** The first sentence is the answer. */
export function fitFinding({ fits, rows, problems }: LogFit): readonly string[] {
  const known = fits.filter(({ suggestion }) => suggestion !== undefined);
  const steps = known.filter(({ kind }) => kind === "step").length;
  const stops = known.filter(({ kind }) => kind === "repair").length;
  if (steps + stops === 0)
    return [`Nothing is fitted: no step has ${fewestValues} times or more in ${counted(rows, "row")}.`];
  const out = leftOut(problems);
  const parts = [counted(steps, "step"), ...(stops > 0 ? [counted(stops, "stop")] : [])].join(" and ");
  const verb = steps + stops === 1 ? "is" : "are";
  const rest = out === 0 ? "no row is left out" : `${counted(out, "row")} ${out === 1 ? "is" : "are"} left out`;
  return [`${parts} ${verb} fitted from ${counted(rows, "row")}; ${rest}.`];
}

/** Warnings of the series, then how the numbers came about. */
export function fitNotes({ fits, waits, words, problems }: LogFit): readonly string[] {
  const warnings = fits.flatMap((fit) =>
    fit.summary.warnings.map((line) => `${fit.station}, ${fitName(fit)}: ${line}.`),
  );
  const shown = warnings.slice(0, mostNotes);
  const isSampled = fits.some(({ summary }) => summary.count > keptValues);
  const kinds = new Set(problems.map(({ problem }) => logProblems[problem])).size;
  return [
    ...shown,
    ...tooFew(fits),
    ...(warnings.length > shown.length ? [`${warnings.length - shown.length} more warnings are in fit.html.`] : []),
    ...(kinds > 0 ? ["The warnings above name what is wrong with rows, how often and where first."] : []),
    ...waitNote(waits),
    ...(isSampled
      ? [`Above ${grouped(keptValues)} values a random sample of so many is fitted; n, mean and sd are of all.`]
      : []),
    `Columns: ${words.join("; ")}.`,
  ];
}

const mostWaits = 5;

/** With names, so that a step that is taken for a wait is seen. */
function waitNote(waits: LogFit["waits"]): readonly string[] {
  const count = [...waits.values()].reduce((sum, each) => sum + each, 0);
  if (count === 0) return [];
  const names = [...waits].toSorted(([, one], [, other]) => other - one).map(([name]) => name);
  const rest = names.length - mostWaits;
  const shown = `${names.slice(0, mostWaits).join(", ")}${rest > 0 ? ` and ${rest} more` : ""}`;
  return [
    `${counted(count, "wait")} ${count === 1 ? "is" : "are"} not fitted, since waits are results of the cell: ${shown}. If one is a step, name it with --step.`,
  ];
}

function tooFew(fits: LogFit["fits"]): readonly string[] {
  const without = fits.filter(({ suggestion }) => suggestion === undefined).length;
  if (without === 0) return [];
  const verb = without === 1 ? "has" : "have";
  return [`${counted(without, "row")} of the table ${verb} too few times: log ${leastValues} or more of each step.`];
}

function counted(count: number, noun: string): string {
  return `${grouped(count)} ${noun}${count === 1 ? "" : "s"}`;
}
