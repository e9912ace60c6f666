// The answer to `run` on one screen: the output and what sets the pace, then how sure that is and where time goes.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Study } from "#analysis/study/study.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { assumptionWords } from "#report/words/assumptionWords.ts";
import { missingCostWords } from "#report/words/costWords.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { runNotes } from "#report/words/runNotes.ts";
import { madeSentence, runWords } from "#report/words/madeWords.ts";
import { changesLines } from "./changesLines.ts";
import { lostLines } from "./lostLines.ts";
import { settingsWords } from "#report/words/settingsWords.ts";
import { runRows } from "./runRows.ts";
import { slackLines } from "./slackLines.ts";
import { timeUseLines } from "./timeUse.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";

/** `width` in columns of the terminal. */
export function runAnswer(study: Study, width = 80, units: UnitSystem = "si"): string {
  const wrapped = (said: string): readonly string[] => wrappedLines(said, width);
  return [
    ...wrapped(study.scenario.title),
    ...settingsWords(study.scenario).flatMap(wrapped),
    ...wrapped(madeSentence(study)),
    "",
    ...alignedLines(runRows(study, units), [], width),
    ...missingCostWords(study.costs).flatMap(wrapped),
    "",
    ...timeUseLines(study, width),
    ...slackLines(study, width),
    "",
    ...lostLines(study, width),
    ...changesLines(study, width),
    ...windowWarnings(study.windows, study.spreads, study.scenario.stations.length, units).flatMap(wrapped),
    ...leftOutWords(study.scenario).flatMap(wrapped),
    ...[...runWords(study), ...runNotes(study), ...assumptionWords([study.scenario])].flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}
