// The process window as a table and in words: value, limits and verdict of each quantity, and the keys that would give more rows.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { outsideWindow, type StationWindow } from "#analysis/window/stationWindow.ts";
import type { ShotSpread } from "#analysis/study/shotSpread.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { shown } from "#report/words/shownValue.ts";
import { spreadCells, spreadWarnings } from "./spreadWords.ts";
import { fillTable, finiteCell, type Cell, type Table } from "./table.ts";
import { windowSpec } from "./tableSpecs.ts";

type WindowRow = StationWindow["rows"][number];

interface Windowed {
  readonly name: string;
  readonly windows: readonly StationWindow[];
  /** Absent without a simulation. */
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
  return [quantity, finiteCell(value), unit, finiteCell(low), finiteCell(high), verdict, remedy, source];
}

/** For `check`: every row, then the keys that would give more rows. */
export function windowLines(
  windows: readonly StationWindow[],
  all: number,
  width = 80,
  units: UnitSystem = "si",
): readonly string[] {
  return windows.flatMap(({ stations, rows, missing, hasConstantMold }) => [
    `Process window${stations.length === all ? "" : `, ${stations.join(", ")}`}:`,
    ...alignedLines([["  quantity", "value", "limits", ""], ...rows.map((row) => rowCells(row, units))], [1], width),
    ...rows
      .filter(({ remedy }) => remedy !== "")
      .flatMap(({ quantity, remedy }) => wrappedLines(`  ${quantity}: ${remedy}`, width)),
    ...(hasConstantMold ? wrappedLines(CONSTANT_MOLD, width) : []),
    ...(rows.some(isUnusual) ? [`  Usual ranges: ${PRACTICE}.`] : []),
    ...missingLines(missing, width),
    "",
  ]);
}

const CONSTANT_MOLD =
  "  A faster cycle needs the cooling to follow: without moldResistance the mold temperature stays as it is.";

/** The keys that would give more rows, grouped by what they would answer. */
function missingLines(missing: StationWindow["missing"], width: number): readonly string[] {
  if (missing.length === 0) return [];
  const fields = [...new Set(missing.map(({ field }) => field))];
  const rows = fields.map((field) => [`  ${field}`, keysOf(missing.filter((row) => row.field === field))]);
  return ["More answers with more keys (`blowcell explain KEY`):", ...alignedLines(rows, [], width)];
}

export const PRACTICE = "common practice, no published source";

const isUnusual = ({ isPractice, remedy }: WindowRow): boolean => isPractice && remedy !== "";

function rowCells(row: WindowRow, units: UnitSystem): readonly string[] {
  const { quantity, value, unit, low, high, verdict } = row;
  const said = unitSaid(quantity, unit);
  const judged = isUnusual(row) ? `${verdict} usual` : verdict === "no limit" ? "" : verdict;
  return [`  ${quantity}`, shown(value, said, units), limits(low, high, (limit) => shown(limit, said, units)), judged];
}

function limits(low: number | null, high: number | null, written: (limit: number) => string): string {
  if (low !== null && high !== null) return rangeWords(written(low), written(high));
  if (low !== null) return `at least ${written(low)}`;
  return high === null ? "" : `at most ${written(high)}`;
}

/** "3.5 to 7 bar": a common unit is written once. */
export function rangeWords(low: string, high: string): string {
  const [number = "", unit = ""] = low.split(/ (.*)/u);
  return high.endsWith(` ${unit}`) ? `${number} to ${high}` : `${low} to ${high}`;
}

/** A stress is shown in MPa, an air pressure in bar. */
export function unitSaid(quantity: string, unit: string): string {
  return unit === "Pa" && quantity.includes("stress") ? "MPa" : unit;
}

function keysOf(missing: StationWindow["missing"]): string {
  const keys = [...new Set(missing.flatMap((row) => row.keys))].map((key) => key.replace(/^station\./, "stations.*."));
  const rest = keys.length - mostKeys;
  return rest > 0 ? `${keys.slice(0, mostKeys).join(", ")} and ${rest} more` : keys.join(", ");
}

const mostKeys = 4;

/** For the answer of a run: each value outside its limits on a line, unusual values together on one; none where all is well. */
export function windowWarnings(
  windows: readonly StationWindow[],
  spreads: readonly ShotSpread[],
  stations: number,
  units: UnitSystem = "si",
): readonly string[] {
  const all = outsideWindow(windows);
  const outside = [
    ...all.filter(({ isPractice }) => !isPractice).map((row) => outsideWords(row, units)),
    ...spreadWarnings(spreads, units),
  ];
  const unusual = unusualLines(
    all.filter(({ isPractice }) => isPractice),
    stations,
    units,
  );
  return [
    ...(outside.length === 0 ? [] : ["Outside the process window:", ...outside.map((line) => `  ${line}`), ""]),
    ...(unusual.length === 0 ? [] : [...unusual, ""]),
  ];
}

type Outside = ReturnType<typeof outsideWindow>[number];

function outsideWords(row: Outside, units: UnitSystem): string {
  return `${row.quantity}, ${row.stations.join(" and ")}: ${beyondWords(row, units)}. ${row.remedy}`;
}

/** One line for each set of stations with the same unusual values. */
function unusualLines(rows: readonly Outside[], stations: number, units: UnitSystem): readonly string[] {
  const where = (row: Outside): string => (row.stations.length === stations ? "" : `${row.stations.join(" and ")}, `);
  return [...new Set(rows.map(where))].map((place) => {
    const values = rows
      .filter((row) => where(row) === place)
      .map((row) => `${row.quantity} ${beyondWords(row, units)}`);
    return `Unusual (${place}${PRACTICE}): ${values.join("; ")}.`;
  });
}

function beyondWords({ quantity, unit, value, verdict, low, high }: Outside, units: UnitSystem): string {
  const said = unitSaid(quantity, unit);
  const limit = (verdict === "below" ? low : high) ?? 0;
  return `${shown(value, said, units)}, ${verdict} ${shown(limit, said, units)}`;
}
