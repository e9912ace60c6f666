// Writes a table as CSV (RFC 4180) that a spreadsheet, a script and a statistics program all read alike.
import { stringify } from "csv-stringify/browser/esm/sync";
import type { Cell, LongTable, Table } from "./table.ts";

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
export function toCsv({ rows, ...spec }: Table): string {
  return [...toCsvPieces({ ...spec, batches: [rows] })].join("");
}

/** They begin as no formula does, and at most their commas need quotes. */
const plainWords = /^(?:[A-Za-z\d][^"\r\n]*)?$/;

/**
 * The same in pieces, for tables that are too long to be held at once. Their texts are few and come again and again: each
 * is written once, plain words by us, since the library takes some milliseconds to get going.
 */
export function* toCsvPieces({ columns, batches }: LongTable): Generator<string> {
  const written = new Map<string, string>();
  const write = (cell: Cell): string => {
    if (typeof cell === "number") return csvNumber(cell);
    if (typeof cell !== "string") return cell === null ? "" : String(cell);
    const known = written.get(cell) ?? writtenText(cell);
    written.set(cell, known);
    return known;
  };
  const line = (row: readonly Cell[]): string => `${row.map(write).join(",")}\r\n`;
  yield line(columns.map(({ name }) => name));
  for (const rows of batches) yield rows.map(line).join("");
}

function writtenText(text: string): string {
  if (plainWords.test(text)) return text.includes(",") ? `"${text}"` : text;
  // Beside a second cell, as a lone empty text is written otherwise.
  return stringify([[text, null]], { escape_formulas: true, eof: false, record_delimiter: "windows" }).slice(0, -1);
}
