// Reads a CSV text row by row, so that a long column does not fill the memory.
import { CsvError, parse } from "csv-parse/browser/esm/sync";

export interface BrokenCsv {
  readonly line: number;
  readonly message: string;
}

/** Gets the cells of one row and its line, from 1. */
type ReadRow = (cells: readonly string[], line: number) => void;

/** Calls `header` with the first row, and the function that it returns with each further row; empty lines are left out. */
export function readCsv(
  text: string,
  header: (names: readonly string[]) => ReadRow | undefined,
): BrokenCsv | undefined {
  const first = /^[^\r\n]*/u.exec(text)?.[0] ?? "";
  // Where commas are decimal, columns are separated by semicolons.
  const delimiter = [";", "\t"].find((mark) => first.includes(mark)) ?? ",";
  let readRow: ReadRow | undefined;
  let isFirst = true;
  const visit = (cells: readonly string[], { lines }: { readonly lines: number }): null => {
    if (isFirst) readRow = header(cells);
    else readRow?.(cells, lines);
    isFirst = false;
    // The parser keeps nothing.
    return null;
  };
  try {
    parse(text, {
      bom: true,
      delimiter,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      on_record: visit,
    });
    if (isFirst) header([]);
    return undefined;
  } catch (failure) {
    if (!(failure instanceof CsvError)) throw failure;
    const { lines } = failure as { readonly lines?: unknown };
    return { line: typeof lines === "number" ? lines : 1, message: failure.message.split("\n")[0] ?? "" };
  }
}
