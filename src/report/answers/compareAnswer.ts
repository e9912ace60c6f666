// The answer to `compare` on one screen: the difference in a sentence, then the scenarios side by side.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { bottleneckWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { costComparison } from "#report/words/costWords.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { percent, plainNumber, seconds, withInterval } from "#report/words/digits.ts";
import { headline, runWords } from "#report/words/madeWords.ts";
import { comparedSettings } from "#report/words/settingsWords.ts";
import { rejectWords, uncheckedWords } from "#report/words/rejectWords.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";

/** `width` in columns of the terminal. */
export function compareAnswer(
  studies: readonly Study[],
  rows: readonly ComparisonRow[],
  width = 80,
  units: UnitSystem = "si",
): string {
  const [base] = studies;
  if (!base) return "";
  const differences = rows.filter(({ resource, measure }) => resource === CELL && measure === headline);
  const wrapped = (said: string): readonly string[] => wrappedLines(said, width);
  return [
    ...comparedSettings(studies.map(({ scenario }) => scenario)).flatMap(wrapped),
    ...[...differences.map(differenceSentence), ...costComparison(studies, rows)].flatMap(wrapped),
    "",
    ...alignedLines(sideBySide(studies)),
    "",
    ...studies.flatMap(paceWords).flatMap(wrapped),
    "",
    ...studies.flatMap((study) => warnings(study, units)).flatMap(wrapped),
    ...[...runWords(base), ...pairWords(differences), ...uncheckedWords(studies)].flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}

function paceWords(study: Study): readonly string[] {
  const { name } = study.scenario;
  const rejects = rejectWords(study);
  return [
    `${name}: bottleneck ${bottleneckWords(study)}; next ${runnerUpWords(study)}.`,
    ...(rejects === undefined ? [] : [`${name}: ${rejects}.`]),
  ];
}

function warnings({ scenario, windows, spreads }: Study, units: UnitSystem): readonly string[] {
  const found = windowWarnings(windows, spreads, scenario.stations.length, units);
  return [...found, ...leftOutWords(scenario)].map((line) =>
    line.replace(/^(?:Outside|Unusual|Not answered)/u, (word) => `${scenario.name}: ${word.toLowerCase()}`),
  );
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

/** "two-station makes 587.7 ± 0.2 good parts an hour more than one-station: 1.988 times as many." */
export function differenceSentence(row: ComparisonRow): string {
  const { base, other, difference, simultaneousHalfWidth, ratio } = row;
  const change = withInterval({ mean: Math.abs(difference), halfWidth: simultaneousHalfWidth });
  const found = {
    more: `${other} makes ${change} good parts an hour more than ${base}`,
    less: `${other} makes ${change} good parts an hour less than ${base}`,
    "no difference seen": `No difference seen between ${other} and ${base} in good parts an hour (${change})`,
    "one pair, no interval": `${other} makes ${plainNumber(Math.abs(difference))} good parts an hour ${difference < 0 ? "less" : "more"} than ${base} in one replication, which gives no interval`,
  }[row.verdict];
  return `${found}${ratio === null ? "" : `: ${plainNumber(ratio)} times as many`}.`;
}

/** How the scenarios were paired. */
export function pairWords(differences: readonly ComparisonRow[]): readonly string[] {
  const [first] = differences;
  if (!first) return [];
  const known = differences.flatMap(({ correlation }) => (correlation === null ? [] : [correlation.toFixed(2)]));
  const correlation = known.length === 0 ? "" : `; correlation ${known.join(", ")}`;
  return [`Replications are paired by common random numbers${correlation}.`];
}
