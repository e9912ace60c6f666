// Writes a table as CSV (RFC 4180) that a spreadsheet, a script and a statistics program all read alike.
import { stringify } from "csv-stringify/browser/esm/sync";
import type { Cell, LongTable, Table, TableSpec } from "./table.ts";

/** More digits would claim more than a simulation knows, and fewer would lose whole milligrams in tonnes. */
const significantDigits = 10;

/** A number with a decimal point and no digits beyond the tenth; empty where it is not a number. */
export function csvNumber(value: number): string {
  // Most are counts, and short: the same digits in a tenth of the time.
  if (Number.isInteger(value) && Math.abs(value) < 1e9) return String(value === 0 ? 0 : value);
  if (!Number.isFinite(value)) return "";
  const rounded = Number(value.toPrecision(significantDigits));
  // Minus zero is a trace of arithmetic that no reader wants to see.
  return String(rounded === 0 ? 0 : rounded);
}

/** CRLF line ends and a header row; text that a spreadsheet would take for a formula gets an apostrophe before it. */
export function toCsv(table: Table): string {
  return writeRows(table, table.rows, true);
}

/**
 * The same in pieces, for tables that are too long to be held at once. Their texts are few and come again and again:
 * each is written by the library once.
 */
export function* toCsvPieces({ batches, ...spec }: LongTable): Generator<string> {
  yield writeRows(spec, [], true);
  const written = new Map<string, string>();
  const write = (cell: Cell): string => {
    if (typeof cell === "number") return csvNumber(cell);
    if (typeof cell !== "string") return cell === null ? "" : String(cell);
    const known = written.get(cell) ?? writtenText(cell);
    written.set(cell, known);
    return known;
  };
  for (const rows of batches) yield rows.map((row) => `${row.map(write).join(",")}\r\n`).join("");
}

/** Beside a second cell, as a lone empty text is written otherwise. */
function writtenText(text: string): string {
  const columns = ["text", "end"].map((name) => ({ name, type: "text", meaning: "" }) as const);
  return writeRows({ name: "", meaning: "", columns }, [[text, null]], false).slice(0, -",\r\n".length);
}

function writeRows(spec: TableSpec, rows: Table["rows"], header: boolean): string {
  return stringify(
    rows.map((row) => [...row]),
    {
      header,
      columns: spec.columns.map(({ name }) => name),
      record_delimiter: "windows",
      escape_formulas: true,
      cast: { number: csvNumber, boolean: String },
    },
  );
}
