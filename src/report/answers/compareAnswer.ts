// The answer to `compare` on one screen: the verdict in a sentence, then the layouts side by side.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Comparison } from "#analysis/study/comparison.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { headlineRows, pairWords, verdictSentences } from "#report/words/layoutWords.ts";
import { runWords } from "#report/words/madeWords.ts";
import { comparedSettings } from "#report/words/settingsWords.ts";
import { comparedNotes } from "#report/words/runNotes.ts";
import { assumptionWords } from "#report/words/assumptionWords.ts";
import { rejectWords } from "#report/words/rejectWords.ts";
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
    ...comparedSettings(studies.map(({ scenario }) => scenario)).flatMap(wrapped),
    ...verdictSentences(comparison).flatMap(wrapped),
    "",
    ...table(outputRows(comparison), [1]),
    ...table(costRows(comparison), []),
    ...(studies.length > mostExplained ? [] : table(pathRows(studies), [])),
    ...pairLines(comparison).flatMap(wrapped),
    ...[...mergedWarnings(studies, units), ...merged(studies, ({ scenario }) => leftOutWords(scenario))].flatMap(
      wrapped,
    ),
    ...[
      ...merged(studies, rejectLines),
      ...differenceNote(comparison),
      ...runWords(base),
      ...comparedNotes(studies),
      ...pairWords(headlineRows(rows)),
      ...assumptionWords(studies.map(({ scenario }) => scenario)),
    ].flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}

type Studies = Comparison["studies"];

/** Lines of several layouts; the same one stands once, with its layouts where it is not of all. */
function merged(studies: Studies, lines: (study: Studies[number]) => readonly string[]): readonly string[] {
  const found = studies.flatMap((study) => lines(study).map((line) => ({ line, name: study.scenario.name })));
  return [...new Set(found.map(({ line }) => line))].map((line) => {
    const names = found.filter((each) => each.line === line).map(({ name }) => name);
    return line === "" || names.length === studies.length ? line : `${names.join(", ")}: ${line}`;
  });
}

function rejectLines(study: Studies[number]): readonly string[] {
  const words = rejectWords(study);
  return words === undefined ? [] : [`${words}.`];
}
