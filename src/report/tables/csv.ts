// Writes a table as CSV (RFC 4180) that a spreadsheet, a script and a statistics program all read alike.
import { stringify, type Options } from "csv-stringify/browser/esm/sync";
import type { LongTable, Table } from "./table.ts";

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

const format: Options = {
  record_delimiter: "windows",
  escape_formulas: true,
  cast: { number: csvNumber, boolean: String },
};

/** CRLF line ends and a header row; text that a spreadsheet would take for a formula gets an apostrophe before it. */
export function toCsv({ rows, ...spec }: Table): string {
  return [...toCsvPieces({ ...spec, batches: [rows] })].join("");
}

/** The same in pieces, for tables that are too long to be held at once. */
export function* toCsvPieces({ columns, batches }: LongTable): Generator<string> {
  yield stringify([columns.map(({ name }) => name)], format);
  for (const rows of batches) yield stringify([...rows], format);
}
