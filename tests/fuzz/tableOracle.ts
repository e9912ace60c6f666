// What holds of the numbers in all tables of results.
import type { Cell, ColumnSpec, Table } from "#report/tables/table.ts";

export function faultsOfTables(tables: readonly Table[]): readonly string[] {
  return tables.flatMap((table) => [
    ...faultsOfCells(table),
    ...(table.name === "time-by-state" ? faultsOfShares(table) : []),
  ]);
}

function faultsOfCells({ name, columns, rows }: Table): readonly string[] {
  return rows.flatMap((row) => {
    const unit = String(row[columns.findIndex((column) => column.name === "unit")] ?? "");
    const about = { unit, words: row.filter((cell) => typeof cell === "string").join(" ") };
    const found = columns.flatMap((column, i) => faultOf(row[i] ?? null, column, about));
    return found.map((fault) => `${name}: ${fault} in ${JSON.stringify(row)}`);
  });
}

interface About {
  readonly unit: string;
  readonly words: string;
}

function faultOf(cell: Cell, column: ColumnSpec, about: About): readonly string[] {
  if (typeof cell !== "number") return [];
  if (!Number.isFinite(cell)) return [`${column.name} is ${cell}`];
  if (cell < 0 && !mayBeNegative(column, about)) return [`${column.name} is negative`];
  return isShare(column, about) && cell > 1 + 1e-9 ? [`${column.name} is above 1`] : [];
}

function mayBeNegative({ name, unit }: ColumnSpec, about: About): boolean {
  // Surplus regrind is sold, and a margin may be missed.
  return (
    /elasticity|difference/u.test(name) || (unit ?? about.unit) === "°C" || /surplus regrind|margin/u.test(about.words)
  );
}

function isShare({ name, type }: ColumnSpec, { unit, words }: About): boolean {
  if (type !== "number" || /half_width|sd/u.test(name)) return false;
  // A short run may be faster than the ideal cycle, which has mean times.
  if (/effectiveness|OEE|NEE/u.test(words)) return false;
  return name === "share" || name.endsWith("_share") || unit === "share";
}

/** The states of each resource fill the whole time. */
function faultsOfShares({ columns, rows }: Table): readonly string[] {
  const [resource, share] = ["resource", "share"].map((name) => columns.findIndex((column) => column.name === name));
  const sums = new Map<Cell, number>();
  for (const row of rows) {
    const key = row[resource!] ?? null;
    sums.set(key, (sums.get(key) ?? 0) + Number(row[share!]));
  }
  return [...sums].flatMap(([key, sum]) => (Math.abs(sum - 1) < 1e-9 ? [] : [`the states of ${key} add up to ${sum}`]));
}
