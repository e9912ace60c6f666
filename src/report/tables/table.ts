// A table of results on its way out: described columns and plain rows, the same for CSV, terminal and pages.
import { invariant } from "#foundation/invariant.ts";

export type Cell = string | number | boolean | null;

/** JSON and CSV have no number without end, such as the sag of a parison that breaks; the verdict beside it says it. */
export function finiteCell(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}

export interface ColumnSpec {
  /** Lower case, words joined by underscores; a unit is part of the name where all values share it. */
  readonly name: string;
  readonly type: "text" | "number" | "integer" | "boolean";
  readonly unit?: string;
  readonly meaning: string;
}

export interface TableSpec {
  /** The file's name without its ending. */
  readonly name: string;
  /** What one row is. */
  readonly meaning: string;
  readonly columns: readonly ColumnSpec[];
  /** A call adds columns of its own. */
  readonly takesMore?: true;
}

export interface Table extends TableSpec {
  /** In the order of the columns; null where there is nothing to say. */
  readonly rows: readonly (readonly Cell[])[];
}

/** A table whose rows come batch by batch, made only when they are asked for. */
export interface LongTable extends TableSpec {
  readonly batches: Iterable<Table["rows"]>;
}

const typeOfCell = { text: "string", number: "number", integer: "number", boolean: "boolean" } as const;

function fits(cell: Cell | undefined, column: ColumnSpec): boolean {
  if (cell === null) return true;
  return typeof cell === typeOfCell[column.type] && (column.type !== "integer" || Number.isInteger(cell));
}

/** Joins a description with its rows. Throws BrokenInvariant where a cell is not what its column says. */
export function fillTable(spec: TableSpec, rows: Table["rows"]): Table {
  for (const row of rows) {
    invariant(row.length === spec.columns.length, "a row has one cell a column", { table: spec.name, row });
    const misfit = spec.columns.find((column, index) => !fits(row[index], column));
    invariant(misfit === undefined, "a cell is what its column says", { table: spec.name, column: misfit?.name, row });
  }
  return { ...spec, rows };
}
