// The answer to `run` on one screen: the output and what sets the pace, then how sure that is and where time goes.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { assumptionWords } from "#report/words/assumptionWords.ts";
import { bottleneckWords, noSlackWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { costWords, missingCostWords } from "#report/words/costWords.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { measuredRows } from "#report/words/measuredWords.ts";
import { measureWords } from "#report/words/shownUnits.ts";
import { withInterval } from "#report/words/digits.ts";
import { headline, madeSentence, meanRows, onShiftWords, productRows, runWords } from "#report/words/madeWords.ts";
import { rejectWords } from "#report/words/rejectWords.ts";
import { idealName, idealWords, runAgainstIdealWords } from "#report/words/idealWords.ts";
import { changesLines } from "./changesLines.ts";
import { lostLines } from "./lostLines.ts";
import { settingsWords } from "#report/words/settingsWords.ts";
import { slackLines } from "./slackLines.ts";
import { timeUseLines } from "./timeUse.ts";
import { spreadLines } from "#report/tables/spreadWords.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";

/** `width` in columns of the terminal. */
export function runAnswer(study: Study, width = 80, units: UnitSystem = "si"): string {
  const wrapped = (said: string): readonly string[] => wrappedLines(said, width);
  return [
    ...wrapped(study.scenario.title),
    ...settingsWords(study.scenario).flatMap(wrapped),
    ...wrapped(madeSentence(study)),
    "",
    ...alignedLines(
      [
        ...productionRows(study, units),
        ...measuredRows(study),
        ...paceRows(study),
        ...spreadLines(study.spreads, units),
        ...costRows(study),
      ],
      [],
      width,
    ),
    ...missingCostWords(study.costs).flatMap(wrapped),
    "",
    ...timeUseLines(study, width),
    ...slackLines(study, width),
    "",
    ...lostLines(study, width),
    ...changesLines(study, width),
    ...windowWarnings(study.windows, study.spreads, study.scenario.stations.length, units).flatMap(wrapped),
    ...leftOutWords(study.scenario).flatMap(wrapped),
    ...[...runWords(study), ...assumptionWords([study.scenario])].flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}

/** Parts are whole: a few slow shots may count the same in every replication although their times vary. */
function sameCountWords({ measures, replications }: Study): string {
  const spreadOf = (measure: string): number | null => measureOf(measures, CELL, measure)?.interval.halfWidth ?? null;
  if (spreadOf(headline) !== 0 || (spreadOf("seconds per shot") ?? 0) === 0) return "";
  return `, the same count in all ${replications} replications: give a longer run for an interval`;
}

function productionRows(study: Study, units: UnitSystem): readonly (readonly string[])[] {
  const of = (measure: string): string | undefined => {
    const found = measureOf(study.measures, CELL, measure);
    return found && withInterval(found.interval);
  };
  const pace = of("seconds per shot");
  const every = pace === undefined || study.scenario.calendar ? "" : `, one every ${pace} s`;
  const nights = study.scenario.calendar ? ", off shift included" : "";
  const rejects = rejectWords(study);
  return [
    [
      "Good parts",
      `${of(headline)} an hour${nights}${sameCountWords(study)}${rejects === undefined ? "" : `; ${rejects}`}`,
    ],
    ...productRows(study),
    ...meanRows(study),
    ...(study.scenario.calendar ? [["On shift", onShiftWords(study)]] : []),
    ["Shots", `${of("shots per hour")} an hour${nights}${every}`],
    ...meltRow(study, units),
  ];
}

/** None where masses are not given. */
function meltRow({ measures }: Study, units: UnitSystem): readonly (readonly string[])[] {
  const rateOf = (measure: string): string | undefined => {
    const found = measureOf(measures, CELL, measure);
    return found && measureWords(found, units);
  };
  const [melt, excessMelt] = [rateOf("melt per hour"), rateOf("excess melt")];
  if (melt === undefined) return [];
  const excess = excessMelt === undefined ? "" : `, of this ${excessMelt} excess melt to regrind`;
  return [["Melt", `${melt}${excess}`]];
}

function paceRows(study: Study): readonly (readonly string[])[] {
  return [
    [idealName(study.ideal), `${idealWords(study.ideal)}${runAgainstIdealWords(study)}`],
    ["Bottleneck", bottleneckWords(study)],
    ["Next", `${runnerUpWords(study)}${noSlackWords(study)}`],
  ];
}

function costRows({ costs }: Study): readonly (readonly string[])[] {
  return costs ? [["Cost", costWords(costs)]] : [];
}
