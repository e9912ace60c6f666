// One measure of a sweep over the values of one path: a line for each combination of the other values, and the ideal cycle's bound.
import { CELL } from "#analysis/replication/measures.ts";
import type { FoundPoint } from "#analysis/study/sweepPoint.ts";
import { variedColumn, type Sweep } from "#report/tables/asked/sweepTable.ts";
import { headline } from "#report/words/madeWords.ts";
import { spokenUnit } from "#report/words/shownUnits.ts";
import { chart, chartWidth, fittedWords, line, words, type ChartWords } from "./chart.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { straightScale } from "./straightScale.ts";

interface PlacedPoint {
  readonly x: number;
  readonly mean: number;
  readonly halfWidth: number;
  readonly ideal: number | null;
}

interface SweepLine {
  readonly name: string;
  readonly points: readonly PlacedPoint[];
}

export interface SweepLines {
  readonly label: string;
  readonly caption: string;
  readonly lines: readonly SweepLine[];
  /** The places on the axis with their words. */
  readonly ticks: readonly (readonly [x: number, words: string])[];
}

/** More lines cannot be distinguished. */
const mostLines = 8;

/** Undefined where no point has the measure, or where it is 0 at all points. */
export function sweepLines(sweep: Sweep, measure: string): SweepLines | undefined {
  const axis = axisOf(sweep);
  const groups = new Map<string, PlacedPoint[]>();
  sweep.points.forEach(({ values, outcome }, place) => {
    const found = outcome.kind === "found" ? placed(outcome, measure, axis.places[place]!) : undefined;
    if (found === undefined) return;
    const others = sweep.paths.flatMap((path, i) =>
      i === axis.index ? [] : [`${shortPath(path)} ${values[i] ?? ""}`],
    );
    const name = others.join(", ");
    groups.set(name, [...(groups.get(name) ?? []), found]);
  });
  if ([...groups.values()].flat().every(({ mean }) => mean === 0)) return undefined;
  const lines = [...groups].map(([name, points]) => ({ name, points: points.toSorted((a, b) => a.x - b.x) }));
  const unit = unitOf(sweep, measure);
  const rest = lines.length > mostLines ? ` The first ${mostLines} of ${lines.length} lines are drawn.` : "";
  const hasIdeal = lines.some(({ points }) => points.some(({ ideal }) => ideal !== null));
  const bound = hasIdeal ? ` Dashed: the ideal cycle${isBeatable(sweep) ? ", or the cell at mean times" : ""}.` : "";
  return {
    label: axis.label,
    caption: `${measure.charAt(0).toUpperCase()}${measure.slice(1)}${unit === "" || measure.includes(unit) ? "" : ` (${unit})`}; vertical lines are 95 % intervals.${bound}${rest}`,
    lines: lines.slice(0, mostLines),
    ticks: axis.ticks,
  };
}

const shortPath = (path: string): string => path.split(".").at(-1) ?? path;

function isBeatable({ points }: Sweep): boolean {
  return points.some(({ outcome }) => outcome.kind === "found" && outcome.ideal.method === "order found by running");
}

function unitOf({ points }: Sweep, measure: string): string {
  const found = points.flatMap(({ outcome }) => (outcome.kind === "found" ? outcome.measures : []));
  const unit = spokenUnit(found.find((each) => each.measure === measure)?.unit ?? "");
  return unit === "1" || unit === "per hour" ? "" : unit;
}

function placed({ measures, ideal }: FoundPoint, measure: string, x: number): PlacedPoint | undefined {
  const found = measures.find((each) => each.resource === CELL && each.measure === measure);
  if (!found) return undefined;
  const bounds: Readonly<Record<string, number | null>> = {
    [headline]: ideal.partsPerHour,
    "seconds per shot": ideal.secondsPerShot,
  };
  return { x, mean: found.mean, halfWidth: found.halfWidth ?? 0, ideal: bounds[measure] ?? null };
}

interface Axis {
  readonly index: number;
  readonly label: string;
  /** Of each point of the sweep. */
  readonly places: readonly number[];
  readonly ticks: SweepLines["ticks"];
}

/** The path with the most values; numbers stand at their size, other values side by side. */
function axisOf(sweep: Sweep): Axis {
  const counts = sweep.paths.map((_, i) => new Set(sweep.points.map(({ values }) => values[i])).size);
  const index = counts.indexOf(Math.max(...counts));
  const { spec, cells } = variedColumn(sweep, index);
  const values = [...new Set(cells)];
  const isNumber = spec.type === "number";
  const places = cells.map((cell) => (isNumber ? Number(cell) : values.indexOf(cell)));
  const unit = spec.unit === undefined ? "" : ` (${spec.unit})`;
  const ticks = values.map((cell, i) => [isNumber ? Number(cell) : i, String(cell)] as const);
  const shift = spec.name.startsWith(`${sweep.paths[index] ?? ""}_shift`) ? "shift of " : "";
  return { index, label: `${shift}${sweep.paths[index] ?? ""}${unit}`, places, ticks };
}

const left = 70;
const right = chartWidth - 230;
const top = 14;
const bottom = 290;
const mostTicks = 12;

export function sweepChart({ lines, ticks, label }: SweepLines, given: ChartWords): Markup {
  const points = lines.flatMap((each) => each.points);
  const xs = points.map((point) => point.x);
  const ys = points.flatMap(({ mean, halfWidth, ideal }) => [mean - halfWidth, mean + halfWidth, ideal ?? mean]);
  const x = straightScale(widened(xs), [left, right]);
  const y = straightScale(widened(ys), [bottom, top]);
  const every = Math.ceil(ticks.length / mostTicks);
  return chart(
    given,
    bottom + 44,
    ...y
      .ticks(6)
      .flatMap((tick) => [
        line(left, y(tick), right, y(tick), "grid"),
        words(String(tick), left - 8, y(tick) + 4, { anchor: "end", style: "quiet" }),
      ]),
    ...ticks
      .filter((_, i) => i % every === 0)
      .map(([place, text]) =>
        words(fittedWords(text, 90), x(place), bottom + 18, { anchor: "middle", style: "quiet" }),
      ),
    words(label, left, bottom + 36, { style: "quiet" }),
    ...lines.flatMap((each) => lineMarkup(each, x, y)),
    ...lineNames(lines, y),
  );
}

/** Equal values still need an axis. */
function widened(values: readonly number[]): readonly [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const margin = (high - low) * 0.06 || Math.abs(high) * 0.01 || 1;
  return [low - margin, high + margin];
}

type Scale = (value: number) => number;

function lineMarkup({ name, points }: SweepLine, x: Scale, y: Scale): readonly Child[] {
  return [
    ...points.slice(1).map((point, i) => line(x(points[i]!.x), y(points[i]!.mean), x(point.x), y(point.mean), "mean")),
    ...points.slice(1).flatMap((point, i) => {
      const before = points[i]!;
      if (before.ideal === null || point.ideal === null) return [];
      return [line(x(before.x), y(before.ideal), x(point.x), y(point.ideal), "mark")];
    }),
    ...points.flatMap(({ x: place, mean, halfWidth }) => [
      ...(halfWidth > 0 ? [line(x(place), y(mean - halfWidth), x(place), y(mean + halfWidth), "whisker")] : []),
      element(
        "circle",
        { cx: x(place), cy: y(mean), r: 4, class: "dot" },
        element("title", {}, `${name === "" ? "" : `${name}: `}${Number(mean.toPrecision(5))}`),
      ),
    ]),
  ];
}

const nameHeight = 16;

/** At the ends of the lines, one below the other where they would overlap. */
function lineNames(lines: readonly SweepLine[], y: Scale): readonly Child[] {
  const ends = lines
    .flatMap(({ name, points }) => (points.length === 0 ? [] : [{ name, at: y(points.at(-1)!.mean) }]))
    .toSorted((one, other) => one.at - other.at);
  let free = -Infinity;
  return ends.map(({ name, at }) => {
    const place = Math.max(at + 4, free);
    free = place + nameHeight;
    return words(fittedWords(name, chartWidth - right - 14), right + 10, place, { style: "name" });
  });
}
