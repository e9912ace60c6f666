// The answer to `run` on one screen: the output and what sets the pace, then how sure that is and where time goes.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { bottleneckWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { costWords, missingCostWords } from "#report/words/costWords.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { measureWords } from "#report/words/shownUnits.ts";
import { seconds, withInterval } from "#report/words/digits.ts";
import { headline, madeSentence, onShiftWords, runWords } from "#report/words/madeWords.ts";
import { rejectWords, uncheckedWords } from "#report/words/rejectWords.ts";
import { idealName, idealWords } from "#report/words/idealWords.ts";
import { settingsWords } from "#report/words/settingsWords.ts";
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
      [...productionRows(study, units), ...paceRows(study), ...spreadLines(study.spreads, units), ...costRows(study)],
      [],
      width,
    ),
    ...missingCostWords(study.costs).flatMap(wrapped),
    "",
    ...timeUseLines(study, width),
    "",
    ...windowWarnings(study.windows, study.spreads, study.scenario.stations.length, units).flatMap(wrapped),
    ...leftOutWords(study.scenario).flatMap(wrapped),
    ...[...runWords(study), ...uncheckedWords([study])].flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}

function productionRows(study: Study, units: UnitSystem): readonly (readonly string[])[] {
  const of = (measure: string): string | undefined => {
    const found = measureOf(study.measures, CELL, measure);
    return found && withInterval(found.interval);
  };
  const pace = of("seconds per shot");
  const rejects = rejectWords(study);
  return [
    ["Good parts", `${of(headline)} an hour${rejects === undefined ? "" : `; ${rejects}`}`],
    ...(study.scenario.calendar ? [["On shift", onShiftWords(study)]] : []),
    ["Shots", `${of("shots per hour")} an hour${pace === undefined ? "" : `, one every ${pace} s`}`],
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
    [idealName(study.ideal), `${idealWords(study.ideal)}${differenceFromRun(study)}`],
    ["Bottleneck", bottleneckWords(study)],
    ["Next", runnerUpWords(study)],
  ];
}

/** A smaller share of the cycle is the effect of cycles cut at the ends of the observed time. */
const leastShare = 0.002;
const leastSeconds = 0.005;

/** With a calendar most of the difference would be nights. */
function differenceFromRun({ measures, ideal, scenario }: Study): string {
  const found = measureOf(measures, CELL, "seconds per shot");
  if (!found || scenario.calendar) return "";
  const more = found.interval.mean - ideal.secondsPerShot;
  if (more >= leastSeconds) return `; the run takes ${seconds(more)} more`;
  const isFaster = ideal.method === "order found by running" && -more > leastShare * ideal.secondsPerShot;
  return isFaster ? `; the run takes ${seconds(-more)} less: its order of service varies` : "; the run takes the same";
}

function costRows({ costs }: Study): readonly (readonly string[])[] {
  return costs ? [["Cost", costWords(costs)]] : [];
}
