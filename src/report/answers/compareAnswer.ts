// The answer to `compare` on one screen: the scenarios side by side, and what the pairs say of their difference.
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { rejectWords } from "#report/words/rejectWords.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { bottleneckWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { costComparison } from "#report/words/costWords.ts";
import { cautions } from "#report/words/cautions.ts";
import { percent, plainNumber, seconds, withInterval } from "#report/words/digits.ts";
import { runWords } from "./runAnswer.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";

const headline = "good parts per hour";

/** `width` in columns of the terminal. */
export function compareAnswer(studies: readonly Study[], rows: readonly ComparisonRow[], width = 80): string {
  const [base] = studies;
  if (!base) return "";
  const table = alignedLines(sideBySide(studies));
  return [
    ...runWords(base),
    "",
    ...table,
    "",
    ...studies.map(
      (study) => `${study.scenario.name}: bottleneck ${bottleneckWords(study)}; next ${runnerUpWords(study)}.`,
    ),
    "",
    ...rows.filter(({ resource, measure }) => resource === CELL && measure === headline).flatMap(differenceWords),
    ...costComparison(studies, rows),
    ...studies.map((study) => `${study.scenario.name}: ${rejectWords(study)}.`),
    "",
    ...studies.flatMap(({ scenario, windows, spreads }) =>
      windowWarnings(windows, spreads).map((line) =>
        line.replace(/^(?:Outside|Unusual)/u, (word) => `${scenario.name}: ${word.toLowerCase()}`),
      ),
    ),
    ...cautions,
    "",
  ]
    .flatMap((said) => (said.length > width && !table.includes(said) ? wrappedLines(said, width) : [said]))
    .join("\n");
}

function sideBySide(studies: readonly Study[]): readonly (readonly string[])[] {
  const heading = ["", "good parts an hour", "seconds a shot", "ideal", "screw waits", "stations wait"];
  if (studies.every(({ costs }) => !costs)) return [heading, ...studies.map(scenarioRow)];
  return [[...heading, "cost of 1,000"], ...studies.map((study) => [...scenarioRow(study), costOf(study)])];
}

function scenarioRow(study: Study): readonly string[] {
  const measured = (measure: string): string => {
    const found = measureOf(study.measures, CELL, measure);
    return found ? withInterval(found.interval) : "none";
  };
  return [
    study.scenario.name,
    measured(headline),
    measured("seconds per shot"),
    seconds(study.ideal.secondsPerShot),
    waitingShare(study, [PLASTICATOR]),
    waitingShare(study, namesOfStations(study)),
  ];
}

function costOf({ costs }: Study): string {
  return costs?.total.perThousand ? `${withInterval(costs.total.perThousand)} ${costs.currency}` : "not known";
}

function namesOfStations({ scenario }: Study): readonly string[] {
  return scenario.stations.map(({ name }) => name);
}

/** Mean over the resources. */
function waitingShare({ states }: Study, resources: readonly string[]): string {
  const waits = states.filter(({ resource, kind }) => kind === "waiting" && resources.includes(resource));
  return percent(waits.reduce((sum, { share }) => sum + share.mean, 0) / resources.length);
}

export function differenceWords(row: ComparisonRow): readonly string[] {
  const { base, other, difference, simultaneousHalfWidth, ratio, pairs, correlation } = row;
  const change = withInterval({ mean: Math.abs(difference), halfWidth: simultaneousHalfWidth });
  const found = {
    more: `${other} makes ${change} good parts an hour more than ${base}`,
    less: `${other} makes ${change} good parts an hour less than ${base}`,
    "no difference seen": `${other} and ${base} show no difference in good parts an hour (${change})`,
    "one pair tells nothing of chance": `${other} differs by ${plainNumber(difference)} good parts an hour from ${base}, by chance or not`,
  }[row.verdict];
  const times = ratio === null ? "" : `: ${plainNumber(ratio)} times as many`;
  const luck = correlation === null ? "" : `, correlation ${correlation.toFixed(2)}`;
  return [`${found}${times}`, `  (${pairs} ${pairs === 1 ? "pair" : "pairs"} of runs with the same luck${luck}).`];
}
