// The answer to `sweep` on one screen: a row a point with output, pace and cost.
import { COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { FoundPoint, PointMeasure } from "#analysis/study/sweepPoint.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Sweep, SweepPoint } from "#report/tables/asked/sweepTable.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { grouped, withInterval } from "#report/words/digits.ts";
import { headline } from "#report/words/madeWords.ts";
import { settingsWords } from "#report/words/settingsWords.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Rows of one screen. */
const mostRows = 20;

function cellMeasure({ measures }: FoundPoint, measure: string): PointMeasure | undefined {
  return measures.find((each) => each.resource === CELL && each.measure === measure);
}

function valueWords({ mean, halfWidth }: PointMeasure): string {
  return withInterval({ mean, halfWidth });
}

interface RunPoint extends SweepPoint {
  readonly outcome: FoundPoint;
}

export function sweepAnswer(sweep: Sweep, scenario: Scenario, width: number, units: UnitSystem): string {
  const found = sweep.points.flatMap(({ values, outcome }) => (outcome.kind === "found" ? [{ values, outcome }] : []));
  const most = found.toSorted((one, other) => outputOf(other) - outputOf(one));
  const shown = found.length > mostRows ? most.slice(0, mostRows) : found;
  const rest = found.length - shown.length;
  return [
    ...settingsWords(scenario).flatMap((line) => wrappedLines(line, width)),
    ...finding(most, sweep).flatMap((line) => wrappedLines(line, width)),
    "",
    ...alignedLines(rowsOf(sweep, shown), [], width),
    ...(rest > 0 ? [`The ${mostRows} points with the highest output; sweep.csv has all ${found.length}.`] : []),
    "",
    ...notes(sweep, found, scenario, units).flatMap((line) => wrappedLines(line, width)),
    ...shortCautions,
    "",
  ].join("\n");
}

function outputOf({ outcome }: RunPoint): number {
  return cellMeasure(outcome, headline)?.mean ?? 0;
}

/** The points with the highest and the lowest output, unless their intervals meet. */
export function finding(most: readonly RunPoint[], { paths }: Sweep): readonly string[] {
  const [first, last] = [most[0], most.at(-1)];
  const [high, low] = [first, last].map((point) => point && cellMeasure(point.outcome, headline));
  if (!first || !last || !high || !low) return ["The cell makes no part at any point."];
  const at = ({ values }: RunPoint): string => paths.map((path, i) => `${path} = ${values[i] ?? ""}`).join(", ");
  if (most.length === 1) return [`The cell makes ${valueWords(high)} good parts an hour at ${at(first)}.`];
  if (high.mean - low.mean <= (high.halfWidth ?? 0) + (low.halfWidth ?? 0)) {
    return [
      `No point makes clearly more than the others: ${valueWords(low)} to ${valueWords(high)} good parts an hour.`,
    ];
  }
  return [
    `The cell makes the most with ${valueWords(high)} good parts an hour at ${at(first)}.`,
    `It makes the least with ${valueWords(low)} good parts an hour at ${at(last)}.`,
  ];
}

/** A heading, then a row a point. */
function rowsOf({ paths }: Sweep, points: readonly RunPoint[]): readonly (readonly string[])[] {
  const hasIdeal = points.some(({ outcome }) => outcome.ideal.partsPerHour !== null);
  const hasCosts = points.some(({ outcome }) => cellMeasure(outcome, COST_MEASURE) !== undefined);
  return [
    [...shortPaths(paths), "good parts/h", "ideal", "s a shot", "ideal", ...(hasCosts ? [COST_MEASURE] : [])],
    ...points.map(({ values, outcome }) => [
      ...values,
      shownMeasure(outcome, headline),
      ...(hasIdeal ? [idealParts(outcome)] : []),
      shownMeasure(outcome, "seconds per shot"),
      marked(outcome, outcome.ideal.secondsPerShot.toFixed(2), "≥"),
      ...(hasCosts ? [shownMeasure(outcome, COST_MEASURE)] : []),
    ]),
  ];
}

function idealParts(point: FoundPoint): string {
  const { partsPerHour } = point.ideal;
  return partsPerHour === null ? "" : marked(point, grouped(partsPerHour.toFixed(1)), "≤");
}

/** Shows where the number at mean times is no ideal cycle, or only a bound of it. */
function marked({ ideal }: FoundPoint, number: string, bound: string): string {
  if (ideal.method === "bound") return `${bound} ${number}`;
  return ideal.method === "fixed order" ? number : `${number} *`;
}

/** The last key of each path, or the whole paths where two would look alike. */
function shortPaths(paths: readonly string[]): readonly string[] {
  const keys = paths.map((path) => path.replace(/^.*\.(?=[^.]+$)/u, ""));
  return new Set(keys).size === keys.length ? keys : paths;
}

function shownMeasure(outcome: FoundPoint, measure: string): string {
  const found = cellMeasure(outcome, measure);
  return found ? valueWords(found) : "";
}

/** How the numbers came about. */
export function notes(
  { points }: Sweep,
  found: readonly RunPoint[],
  { run }: Scenario,
  units: UnitSystem,
): readonly string[] {
  const refused = points.length - found.length;
  const [first] = found;
  const has = (method: FoundPoint["ideal"]["method"]): boolean =>
    found.some(({ outcome }) => outcome.ideal.method === method);
  const length = formatQuantity(run.length, "time", { digits: 3, system: units });
  return [
    ...(refused > 0 ? [`${refused} of ${points.length} points are refused and have no row.`] : []),
    ...(has("bound") ? ["≤ and ≥: only a bound, because no repeating order of stations is found."] : []),
    ...(has("order found by running")
      ? ["* at mean times: the order of stations was found by running, and a run can be faster."]
      : []),
    `${counted(found.length, "point")}, ${counted(first?.outcome.replications ?? 0, "replication")} of ${length} each, with common random numbers; ± is the 95 % interval of the mean.`,
  ];
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}
