// The rows of a CSV text, each with its line, for reading one of its columns.
import { CsvError, parse } from "csv-parse/browser/esm/sync";

export interface CsvRow {
  readonly cells: readonly string[];
  /** From 1. */
  readonly line: number;
}

export interface BrokenCsv {
  readonly line: number;
  readonly message: string;
}

interface ParsedRow {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

/** Header row first; empty lines are left out. */
export function csvRows(text: string): readonly CsvRow[] | BrokenCsv {
  const header = /^[^\r\n]*/u.exec(text)?.[0] ?? "";
  // Where commas are decimal, columns are separated by semicolons.
  const delimiter = [";", "\t"].find((mark) => header.includes(mark)) ?? ",";
  const layout = { bom: true, delimiter, relax_column_count: true, skip_empty_lines: true, trim: true };
  try {
    const rows = parse(text, { ...layout, info: true }) as unknown as readonly ParsedRow[];
    return rows.map(({ record, info }) => ({ cells: record, line: info.lines }));
  } catch (failure) {
    if (!(failure instanceof CsvError)) throw failure;
    const { lines } = failure as { readonly lines?: unknown };
    return { line: typeof lines === "number" ? lines : 1, message: failure.message.split("\n")[0] ?? "" };
  }
}
