// The rows of the answer to `run`: what was made, what sets the pace, and what it costs.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { bottleneckWords, noSlackWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { costWords } from "#report/words/costWords.ts";
import { measuredRows } from "#report/words/measuredWords.ts";
import { measureWords } from "#report/words/shownUnits.ts";
import { withInterval } from "#report/words/digits.ts";
import { headline, meanRows, onShiftWords, productRows } from "#report/words/madeWords.ts";
import { rejectWords } from "#report/words/rejectWords.ts";
import { idealName, idealWords, runAgainstIdealWords } from "#report/words/idealWords.ts";
import { spreadLines } from "#report/tables/spreadWords.ts";

/** A name and what is said of it. */
export function runRows(study: Study, units: UnitSystem): readonly (readonly string[])[] {
  return [
    ...productionRows(study, units),
    ...measuredRows(study),
    ...paceRows(study),
    ...spreadLines(study.spreads, units),
    ...costRows(study),
  ];
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
