// The answer to `run` on one screen: what the cell makes, how sure that is, where time goes, what holds it back.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { bottleneckWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { costWords, missingCostWords } from "#report/words/costWords.ts";
import { cautions } from "#report/words/cautions.ts";
import { percent, seconds, withInterval } from "#report/words/digits.ts";
import { rejectWords } from "#report/words/rejectWords.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { idealWords } from "#report/words/idealWords.ts";
import { timeUseLines } from "./timeUse.ts";
import { spreadLines } from "#report/tables/spreadWords.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";

/** `width` in columns of the terminal. */
export function runAnswer(study: Study, width = 80): string {
  const wrapped = (said: string): readonly string[] => wrappedLines(said, width);
  return [
    ...[study.scenario.title, ...runWords(study)].flatMap(wrapped),
    "",
    ...alignedLines(
      [...productionRows(study), ...bindingRows(study), ...spreadLines(study.spreads), ...costRows(study)],
      [],
      width,
    ),
    ...missingCostWords(study.costs).flatMap(wrapped),
    "",
    ...timeUseLines(study, width),
    "",
    ...windowWarnings(study.windows, study.spreads).flatMap(wrapped),
    ...leftOutWords(study.scenario).flatMap(wrapped),
    ...cautions,
    "",
  ].join("\n");
}

/** What was run, and what ± means. */
export function runWords({ scenario, replications }: Study): readonly string[] {
  const { length, seed, warmup } = scenario.run;
  const time = (value: number): string => formatQuantity(value, "time", { digits: 3 });
  const cut = warmup !== "auto" && warmup > 0 ? `, the first ${time(warmup)} of each not counted` : "";
  const spread =
    replications > 1 ? "± is the 95 % confidence interval" : "one replication: how far chance moves it is not known";
  const runs = `${replications} ${replications === 1 ? "replication" : "replications"} of ${time(length)}`;
  return [`${runs}${cut}, seed "${seed}"; ${spread}.`];
}

function productionRows(study: Study): readonly (readonly string[])[] {
  const of = (measure: string): string | undefined => {
    const found = measureOf(study.measures, CELL, measure);
    return found && withInterval(found.interval);
  };
  const pace = of("seconds per shot");
  return [
    ["Good parts", `${of("good parts per hour")} an hour (${rejectWords(study)})`],
    ...onShiftRow(study),
    ["Shots", `${of("shots per hour")} an hour${pace === undefined ? "" : `, one every ${pace} s`}`],
    ...meltRow(of("melt per hour"), of("excess melt")),
    ["Ideal cycle", `${idealWords(study.ideal)}${excess(study)}`],
  ];
}

/** With what a die that never stops sends to regrind; none where masses are not given. */
function meltRow(melt: string | undefined, excessMelt: string | undefined): readonly (readonly string[])[] {
  if (melt === undefined) return [];
  const regrind = excessMelt === undefined ? "" : `, ${excessMelt} of them excess, to regrind`;
  return [["Melt", `${melt} kg/h${regrind}`]];
}

/** Where there are shifts, what an hour of them brings. */
function onShiftRow(study: Study): readonly (readonly string[])[] {
  return study.scenario.calendar ? [["On shift", onShiftWords(study)]] : [];
}

/** "48 % of the time, 1087 ± 3 good parts an hour of it". */
export function onShiftWords({ scenario, measures }: Study): string {
  const { calendar, run } = scenario;
  const made = measureOf(measures, CELL, "good parts per hour");
  if (!calendar || !made) return "";
  const rest = calendar.off.reduce((sum, { from, until }) => sum + until - from, 0);
  const share = 1 - rest / run.length;
  const { mean, halfWidth } = made.interval;
  const scaled = { ...made.interval, mean: mean / share, halfWidth: halfWidth === null ? null : halfWidth / share };
  return `${percent(share)} of the time, ${withInterval(scaled)} good parts an hour of it`;
}

/** How much longer a shot takes than at best; a little less is only where the observed time begins and ends in a cycle. */
function excess({ measures, ideal, scenario }: Study): string {
  const found = measureOf(measures, CELL, "seconds per shot");
  // On a calendar most of the difference would be nights.
  if (!found || scenario.calendar) return "";
  const more = found.interval.mean - ideal.secondsPerShot;
  const isOther = ideal.method === "order found by running" && more < -0.002 * ideal.secondsPerShot;
  if (isOther) return `; the run took ${seconds(-more)} less: luck changes the order, and rejects load no server`;
  return more < 0.005 ? "; the run kept it" : `; the run took ${seconds(more)} more`;
}

function bindingRows(study: Study): readonly (readonly string[])[] {
  return [
    ["Bottleneck", bottleneckWords(study)],
    ["Next", runnerUpWords(study)],
  ];
}

function costRows({ costs }: Study): readonly (readonly string[])[] {
  return costs ? [["Cost", costWords(costs)]] : [];
}
