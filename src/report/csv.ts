// Writes a table as CSV (RFC 4180) that a spreadsheet, a script and a statistics program all read alike.
import { stringify } from "csv-stringify/browser/esm/sync";
import type { LongTable, Table, TableSpec } from "./table.ts";

/** More digits would claim more than a simulation knows, and fewer would lose whole milligrams in tonnes. */
const significantDigits = 10;

/** A number with a decimal point and no digits beyond the tenth; empty where it is not a number. */
function writeNumber(value: number): string {
  if (!Number.isFinite(value)) return "";
  const rounded = Number(value.toPrecision(significantDigits));
  // Minus zero is a trace of arithmetic that no reader wants to see.
  return String(rounded === 0 ? 0 : rounded);
}

/** CRLF line ends and a header row; text that a spreadsheet would take for a formula gets an apostrophe before it. */
export function toCsv(table: Table): string {
  return writeRows(table, table.rows, true);
}

/** The same in pieces, for tables that are too long to be held at once. */
export function* toCsvPieces({ batches, ...spec }: LongTable): Generator<string> {
  yield writeRows(spec, [], true);
  for (const rows of batches) yield writeRows(spec, rows, false);
}

function writeRows(spec: TableSpec, rows: Table["rows"], header: boolean): string {
  return stringify(
    rows.map((row) => [...row]),
    {
      header,
      columns: spec.columns.map(({ name }) => name),
      record_delimiter: "windows",
      escape_formulas: true,
      cast: { number: writeNumber, boolean: String },
    },
  );
}
