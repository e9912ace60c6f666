// The process window in words and as a table: each quantity with its value, limits and verdict, and the keys that would give more.
import { outsideWindow, type StationWindow } from "#analysis/stationWindow.ts";
import type { Dimension } from "#foundation/dimension.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { alignedLines } from "./alignedLines.ts";
import { fillTable, type Table } from "./table.ts";
import { windowSpec } from "./tableSpecs.ts";

type WindowRow = StationWindow["rows"][number];

export function windowTable(
  scenarios: readonly { readonly name: string; readonly windows: readonly StationWindow[] }[],
): Table {
  const rows = scenarios.flatMap(({ name, windows }) =>
    windows.flatMap(({ stations, rows: own }) =>
      stations.flatMap((station) =>
        own.map(({ quantity, value, unit, low, high, verdict, remedy, source }) => [
          name,
          station,
          quantity,
          value,
          unit,
          low,
          high,
          verdict,
          remedy,
          source,
        ]),
      ),
    ),
  );
  return fillTable(windowSpec, rows);
}

/** For `check`: every row, then what would give the rows left out. */
export function windowLines(windows: readonly StationWindow[], all: number): readonly string[] {
  return windows.flatMap(({ stations, rows, missing }) => [
    `Process window${stations.length === all ? "" : `, ${stations.join(", ")}`}:`,
    ...alignedLines([["  quantity", "value", "limits", ""], ...rows.map(rowCells)], [1]),
    ...rows.filter(({ remedy }) => remedy !== "").map(({ quantity, remedy }) => `  ${quantity}: ${remedy}`),
    ...(missing.length === 0 ? [] : [`  ${missing.length} more rows with ${keysOf(missing)}`]),
    "",
  ]);
}

function rowCells({ quantity, value, unit, low, high, verdict }: WindowRow): readonly string[] {
  const said = unitSaid(quantity, unit);
  return [`  ${quantity}`, shown(value, said), limits(low, high, said), verdict === "no limit" ? "" : verdict];
}

function limits(low: number | null, high: number | null, unit: string): string {
  if (low !== null && high !== null) return `${shown(low, unit)} to ${shown(high, unit)}`;
  if (low !== null) return `at least ${shown(low, unit)}`;
  return high === null ? "" : `at most ${shown(high, unit)}`;
}

/** Formulas and material data are good for three digits at best. */
const digits = 3;

/** Units in which a practitioner would say it; tables keep SI. */
const dimensionOf: Readonly<Record<string, Dimension>> = {
  s: "time",
  m: "length",
  "m³": "volume",
  kg: "mass",
  "kg/s": "rate",
  Pa: "pressure",
  N: "force",
  W: "power",
  "J/kg": "specificEnergy",
  "1": "share",
};

/** A stress is no air pressure: it is said in MPa. */
function unitSaid(quantity: string, unit: string): string {
  return unit === "Pa" && quantity.includes("stress") ? "MPa" : unit;
}

function shown(value: number, unit: string): string {
  // A time that has no end, a length that has drawn to nothing.
  if (!Number.isFinite(value)) return "without end";
  if (unit === "MPa") return `${Number((value / 1e6).toPrecision(digits))} MPa`;
  const dimension = dimensionOf[unit];
  return dimension ? formatQuantity(value, dimension, { digits }) : `${Number(value.toPrecision(digits))} ${unit}`;
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

/** For the answer of a run: what lies outside, a line each; nothing where all is well. */
export function windowWarnings(windows: readonly StationWindow[]): readonly string[] {
  const outside = outsideWindow(windows);
  const words = outside.map(({ quantity, value, unit, low, high, verdict, remedy, stations }) => {
    const limit = verdict === "below" ? low : high;
    const said = unitSaid(quantity, unit);
    return `${quantity}, ${stations.join(" and ")}: ${shown(value, said)}, ${verdict} ${shown(limit ?? 0, said)}. ${remedy}`;
  });
  return words.length === 0 ? [] : ["Outside the process window:", ...words.map((line) => `  ${line}`), ""];
}
