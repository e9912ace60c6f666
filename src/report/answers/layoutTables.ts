// The layouts of a comparison side by side: output, what sets the pace, and cost.
import { CREW } from "#analysis/ideal/takeawayOwners.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { COST_AN_HOUR, COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import type { Comparison, ComparisonRow } from "#analysis/study/comparison.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { alignedLines } from "#report/words/alignedLines.ts";
import { busyShare, paceSetter, resourceName, sharesByNoun, tiedWords } from "#report/words/bottleneckWords.ts";
import { percent, plainNumber, seconds, withInterval } from "#report/words/digits.ts";
import { headlineRows } from "#report/words/layoutWords.ts";
import { headline } from "#report/words/madeWords.ts";
import { outputUnit } from "#report/words/outputUnit.ts";
import { paybackCell } from "#report/words/paybackWords.ts";
import { ownerName } from "#report/words/tradeWords.ts";

type Rows = readonly (readonly string[])[];

/** Heading, then a row a layout in the order of the call. */
export function outputRows({ studies, rows }: Pick<Comparison, "studies" | "rows">): Rows {
  const unit = outputUnit(studies);
  const differences = differencesByLayout(headlineRows(rows));
  const made = (study: Study): string => {
    const found = measureOf(study.measures, CELL, headline);
    return found ? withInterval(found.interval, unit.factor) : "none";
  };
  const table = [
    ["", unit.words, "difference", "sets the pace, busy"],
    ...studies.map((study) => [
      study.scenario.name,
      made(study),
      differenceCell(differences?.get(study.scenario.name), unit.factor),
      paceCell(study),
    ]),
  ];
  return differences ? table : withoutColumn(table, 2);
}

/** Why: heading, then a row a layout. */
export function pathRows(studies: readonly Study[]): Rows {
  const hasCalendar = studies.some(({ scenario }) => scenario.calendar);
  const table = [
    ["", "a shot", "ideal", "path", "slack next", "waits: screw", "stations"],
    ...studies.map((study) => [
      study.scenario.name,
      secondsCell(study),
      seconds(study.ideal.secondsPerShot),
      pathCell(study),
      slackCell(study),
      waitingShare(study, [PLASTICATOR]),
      waitingShare(
        study,
        study.scenario.stations.map(({ name }) => name),
      ),
    ]),
  ];
  // With a calendar, seconds a shot would count the nights.
  return hasCalendar ? withoutColumn(table, 1) : table;
}

/** Cost of an hour and of 1,000 good parts, each with its difference; none where no layout has costs. */
export function costRows({ studies, rows, paybacks }: Comparison): Rows {
  const costed = studies.filter(({ costs }) => costs);
  const currency = costed[0]?.costs?.currency;
  if (currency === undefined) return [];
  const [anHour, thousand] = [COST_AN_HOUR, COST_MEASURE].map((measure) => ({
    measure,
    differences: differencesByLayout(rows.filter((row) => row.measure === measure)),
  }));
  const table = [
    ["", `${currency} an hour`, "difference", "per 1,000", "difference", "payback"],
    ...costed.map((study) => [
      study.scenario.name,
      ...[anHour!, thousand!].flatMap(({ measure, differences }) => [
        costCell(study, measure),
        differenceCell(differences?.get(study.scenario.name)),
      ]),
      paybackCell(paybacks.find(({ other }) => other === study.scenario.name)),
    ]),
  ];
  const hasPairs = differencesByLayout(headlineRows(rows)) !== undefined;
  const paid = paybacks.length > 0 && hasPairs ? table : withoutColumn(table, 5);
  const isCompared = rows.some(({ measure }) => measure === COST_AN_HOUR);
  return hasPairs && isCompared ? paid : withoutColumn(withoutColumn(paid, 4), 2);
}

const mostPairs = 10;

/** Where layouts have several bases: each pair on a line, or of many pairs those without a difference. */
export function pairLines({ studies, rows }: Pick<Comparison, "studies" | "rows">): readonly string[] {
  const differences = headlineRows(rows);
  if (differencesByLayout(differences)) return [];
  const unit = outputUnit(studies);
  const same = differences.filter(({ verdict }) => verdict !== "more" && verdict !== "less");
  if (differences.length > mostPairs)
    return [
      `No difference in ${unit.words} is seen in ${same.length} of ${differences.length} pairs${same.length === 0 ? "" : `: ${listedPairs(same)}`}.`,
      "",
    ];
  const costs = rows.filter(({ measure }) => measure === COST_MEASURE);
  const lines = differences.map((row) => [
    `${row.other} − ${row.base}`,
    differenceCell(row, unit.factor),
    differenceCell(costs.find(({ base, other }) => base === row.base && other === row.other)),
  ]);
  const table = [["difference", unit.words, `cost per 1,000`], ...lines];
  return [...alignedLines(costs.length === 0 ? withoutColumn(table, 2) : table, [1, 2]), ""];
}

function listedPairs(same: readonly ComparisonRow[]): string {
  const named = same.slice(0, mostPairs).map(({ base, other }) => `${base} and ${other}`);
  const rest = same.length - named.length;
  return `${named.join("; ")}${rest > 0 ? `; ${rest} more in comparison.csv` : ""}`;
}

/** Says what the columns of differences are from, and how a difference that is not seen is marked. */
export function differenceNote({ studies, rows }: Pick<Comparison, "studies" | "rows">): readonly string[] {
  const differences = headlineRows(rows);
  if (studies.length === 2 || differences.length === 0) return [];
  const unseen = rows.some(
    ({ resource, measure, verdict }) =>
      resource === CELL && [headline, COST_AN_HOUR, COST_MEASURE].includes(measure) && verdict === "no difference seen",
  );
  const bases = new Set(differences.map(({ base }) => base));
  const from = bases.size === 1 ? `from ${[...bases][0]}` : "from the layout above";
  const note = differencesByLayout(differences) ? [`Differences are ${from}.`] : [];
  return [[...note, ...(unseen ? ["(=) no difference seen."] : [])].join(" ")].filter((line) => line !== "");
}

/** Undefined where a layout is compared with several others. */
function differencesByLayout(rows: readonly ComparisonRow[]): ReadonlyMap<string, ComparisonRow> | undefined {
  const found = new Map(rows.map((row) => [row.other, row]));
  return found.size === rows.length ? found : undefined;
}

/** "+587.7 ± 0.2"; "(=)" marks a difference that is not seen. */
function differenceCell(row: ComparisonRow | undefined, factor = 1): string {
  if (!row) return "";
  const { difference, simultaneousHalfWidth, verdict } = row;
  const sign = difference > 0 ? "+" : "";
  const value =
    simultaneousHalfWidth === null
      ? plainNumber(difference * factor)
      : withInterval({ mean: difference, halfWidth: simultaneousHalfWidth }, factor);
  return `${sign}${value}${verdict === "no difference seen" ? " (=)" : ""}`;
}

function costCell({ measures }: Study, measure: string): string {
  const found = measureOf(measures, CELL, measure);
  return found ? withInterval(found.interval) : "not known";
}

/** "2 stations 99.4 %". */
function paceCell(study: Study): string {
  const first = paceSetter(study);
  if (!first) return "no shot";
  const { group, resources } = first;
  const kind = group === CREW ? "operators" : group;
  const name = resources.length > 1 ? `${resources.length} ${kind}` : resourceName(first).replace(/^the /u, "");
  return `${name} ${percent(busyShare(first, study.states))}${tiedWords(study) === "" ? "" : ", tied"}`;
}

/** "cooling 64 %", the largest step of what sets the pace. */
function pathCell(study: Study): string {
  const first = paceSetter(study);
  const [step] = first ? sharesByNoun(first) : [];
  return step ? `${step.noun} ${percent(step.share)}` : "";
}

/** "screw 0.94 s". */
function slackCell({ runnerUp }: Study): string {
  if (!runnerUp) return "";
  return `${ownerName(runnerUp.name).replace(/^the /u, "")} ${seconds(Math.max(0, runnerUp.slackPerShot))}`;
}

function secondsCell({ measures }: Study): string {
  const found = measureOf(measures, CELL, "seconds per shot");
  return found ? seconds(found.interval.mean) : "none";
}

/** Mean over the resources. */
function waitingShare({ states }: Study, resources: readonly string[]): string {
  const waits = states.filter(({ resource, kind }) => kind === "waiting" && resources.includes(resource));
  return percent(waits.reduce((sum, { share }) => sum + share.mean, 0) / resources.length);
}

function withoutColumn(rows: Rows, at: number): Rows {
  return rows.map((row) => row.filter((_, column) => column !== at));
}
