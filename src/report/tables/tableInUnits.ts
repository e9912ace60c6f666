// A table with the values of each row in the units of one system, for a page; files stay in SI.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { shownUnit } from "#report/words/shownUnits.ts";
import type { Cell, ColumnSpec, Table } from "./table.ts";

/** Columns whose cells have the unit of their row. */
export const valueColumns =
  "value mean min p05 p05_low p05_high p50 p80 p95 p95_low p95_high max low_limit high_limit measured model single_low_90 single_high_90".split(
    " ",
  );
/** Columns with a difference of such values. */
export const differenceColumns =
  "difference half_width_95 simultaneous_half_width_95 sd half_width behind behind_half_width worthwhile".split(" ");

/** The same table where it has no column of units. */
export function tableInUnits(table: Table, system: UnitSystem): Table {
  const at = table.columns.findIndex(({ name }) => name === "unit");
  if (system === "si" || at === -1) return table;
  return { ...table, rows: table.rows.map((row) => rowInUnits(row, at, table.columns, system)) };
}

function rowInUnits(
  row: readonly Cell[],
  at: number,
  columns: readonly ColumnSpec[],
  system: UnitSystem,
): readonly Cell[] {
  const isIn = (names: readonly string[], i: number): boolean => names.includes(columns[i]!.name);
  const size = row.find((cell, i) => typeof cell === "number" && isIn([...valueColumns, ...differenceColumns], i));
  const unit = shownUnit(String(row[at]), Number(size ?? 0), system);
  return row.map((cell, i) => {
    if (i === at) return unit.symbol;
    if (typeof cell !== "number") return cell;
    if (isIn(differenceColumns, i)) return unit.difference(cell);
    return isIn(valueColumns, i) ? unit.value(cell) : cell;
  });
}
