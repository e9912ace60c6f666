// The process window in words and as a table: each quantity with its value, limits and verdict, and the keys that would give more.
import { outsideWindow, type StationWindow } from "#analysis/window/stationWindow.ts";
import type { ShotSpread } from "#analysis/study/shotSpread.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { shown } from "#report/words/shownValue.ts";
import { spreadCells, spreadWarnings } from "./spreadWords.ts";
import { fillTable, type Cell, type Table } from "./table.ts";
import { windowSpec } from "./tableSpecs.ts";

type WindowRow = StationWindow["rows"][number];

interface Windowed {
  readonly name: string;
  readonly windows: readonly StationWindow[];
  /** Nothing where nothing was simulated. */
  readonly spreads?: readonly ShotSpread[];
}

export function windowTable(scenarios: readonly Windowed[]): Table {
  const rows = scenarios.flatMap(({ name, windows, spreads = [] }) =>
    windows.flatMap(({ stations, rows: own }) =>
      stations.flatMap((station) => [
        ...own.map((row) => [name, station, ...windowCells(row)]),
        ...spreads
          .filter((spread) => spread.station === station)
          .flatMap((spread) => spreadCells(spread).map((cells) => [name, station, ...cells])),
      ]),
    ),
  );
  return fillTable(windowSpec, rows);
}

function windowCells({ quantity, value, unit, low, high, verdict, remedy, source }: WindowRow): readonly Cell[] {
  return [quantity, value, unit, low, high, verdict, remedy, source];
}

/** For `check`: every row, then what would give the rows left out. */
export function windowLines(windows: readonly StationWindow[], all: number, width = 80): readonly string[] {
  return windows.flatMap(({ stations, rows, missing }) => [
    `Process window${stations.length === all ? "" : `, ${stations.join(", ")}`}:`,
    ...alignedLines([["  quantity", "value", "limits", ""], ...rows.map(rowCells)], [1], width),
    ...rows
      .filter(({ remedy }) => remedy !== "")
      .flatMap(({ quantity, remedy }) => wrappedLines(`  ${quantity}: ${remedy}`, width)),
    ...(rows.some(isUnusual) ? [`  What is usual: ${PRACTICE}.`] : []),
    ...(missing.length === 0 ? [] : wrappedLines(`  ${missing.length} more rows with ${keysOf(missing)}`, width)),
    "",
  ]);
}

const PRACTICE = "common practice, no published source";

const isUnusual = ({ isPractice, remedy }: WindowRow): boolean => isPractice && remedy !== "";

function rowCells(row: WindowRow): readonly string[] {
  const { quantity, value, unit, low, high, verdict } = row;
  const said = unitSaid(quantity, unit);
  const judged = isUnusual(row) ? `${verdict} usual` : verdict === "no limit" ? "" : verdict;
  return [`  ${quantity}`, shown(value, said), limits(low, high, said), judged];
}

function limits(low: number | null, high: number | null, unit: string): string {
  if (low !== null && high !== null) return rangeWords(shown(low, unit), shown(high, unit));
  if (low !== null) return `at least ${shown(low, unit)}`;
  return high === null ? "" : `at most ${shown(high, unit)}`;
}

/** "3.5 to 7 bar": a unit that both share is said once. */
function rangeWords(low: string, high: string): string {
  const [number = "", unit = ""] = low.split(/ (.*)/u);
  return high.endsWith(` ${unit}`) ? `${number} to ${high}` : `${low} to ${high}`;
}

/** A stress is no air pressure: it is said in MPa. */
function unitSaid(quantity: string, unit: string): string {
  return unit === "Pa" && quantity.includes("stress") ? "MPa" : unit;
}

function keysOf(missing: StationWindow["missing"]): string {
  const keys = [...new Set(missing.flatMap((row) => row.keys))].map(
    (key) => `\`${key.replace(/^station\./, "stations.*.")}\``,
  );
  return keys.length > mostKeys
    ? `${keys.slice(0, mostKeys).join(", ")} and ${keys.length - mostKeys} more keys`
    : keys.join(", ");
}

const mostKeys = 6;

/** For the answer of a run: what lies outside, a line each, and what is merely unusual in one; nothing where all is well. */
export function windowWarnings(
  windows: readonly StationWindow[],
  spreads: readonly ShotSpread[] = [],
): readonly string[] {
  const all = outsideWindow(windows);
  const outside = [...all.filter(({ isPractice }) => !isPractice).map(outsideWords), ...spreadWarnings(spreads)];
  const unusual = all.filter(({ isPractice }) => isPractice).map(unusualWords);
  return [
    ...(outside.length === 0 ? [] : ["Outside the process window:", ...outside.map((line) => `  ${line}`), ""]),
    ...(unusual.length === 0 ? [] : [`Unusual (${PRACTICE}): ${unusual.join("; ")}.`, ""]),
  ];
}

type Outside = ReturnType<typeof outsideWindow>[number];

function outsideWords(row: Outside): string {
  return `${row.quantity}, ${row.stations.join(" and ")}: ${beyondWords(row)}. ${row.remedy}`;
}

function unusualWords(row: Outside): string {
  return `${row.quantity} ${beyondWords(row)}`;
}

function beyondWords({ quantity, unit, value, verdict, low, high }: Outside): string {
  const said = unitSaid(quantity, unit);
  return `${shown(value, said)}, ${verdict} ${shown((verdict === "below" ? low : high) ?? 0, said)}`;
}
