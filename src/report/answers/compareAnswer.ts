// The answer to `compare` on one screen: the verdict in a sentence, then the layouts side by side.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Comparison } from "#analysis/study/comparison.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { headlineRows, pairWords, verdictSentences } from "#report/words/layoutWords.ts";
import { runWords } from "#report/words/madeWords.ts";
import { rejectWords, uncheckedWords } from "#report/words/rejectWords.ts";
import { mergedWarnings } from "#report/tables/mergedWarnings.ts";
import { costRows, differenceNote, outputRows, pairLines, pathRows } from "./layoutTables.ts";

/** Of more layouts the report says why. */
const mostExplained = 5;

/** `width` in columns of the terminal. */
export function compareAnswer(comparison: Comparison, width = 80, units: UnitSystem = "si"): string {
  const { studies, rows } = comparison;
  const [base] = studies;
  if (!base) return "";
  const wrapped = (said: string): readonly string[] => wrappedLines(said, width);
  const table = (cells: ReturnType<typeof outputRows>, numbers: readonly number[]): readonly string[] =>
    cells.length === 0 ? [] : [...alignedLines(cells, numbers, width), ""];
  return [
    ...verdictSentences(comparison).flatMap(wrapped),
    "",
    ...table(outputRows(comparison), [1]),
    ...table(costRows(comparison), []),
    ...(studies.length > mostExplained ? [] : table(pathRows(studies), [])),
    ...pairLines(comparison).flatMap(wrapped),
    ...[...mergedWarnings(studies, units), ...notAnswered(studies), ...rejects(studies)].flatMap(wrapped),
    ...[
      ...differenceNote(comparison),
      ...runWords(base),
      ...pairWords(headlineRows(rows)),
      ...uncheckedWords(studies),
    ].flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}

type Studies = Comparison["studies"];

/** The same sentence of several layouts stands once. */
function notAnswered(studies: Studies): readonly string[] {
  const lines = studies.flatMap(({ scenario }) => leftOutWords(scenario).map((line) => ({ line, scenario })));
  return [...new Set(lines.map(({ line }) => line))].map((line) => {
    const names = lines.filter((each) => each.line === line).map(({ scenario }) => scenario.name);
    return line === "" || names.length === studies.length ? line : `${names.join(", ")}: ${line}`;
  });
}

function rejects(studies: Studies): readonly string[] {
  const found = studies.flatMap((study) => {
    const words = rejectWords(study);
    return words === undefined ? [] : [`${study.scenario.name}: ${words}.`];
  });
  return found.length === 0 ? [] : [...found, ""];
}
