// A table of results as HTML with rounded numbers; the CSV file has all digits.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { csvNumber } from "#report/tables/csv.ts";
import { alike, element, type Markup } from "#report/charts/markup.ts";
import type { Cell, ColumnSpec, Table } from "#report/tables/table.ts";
import { spokenUnit } from "#report/words/shownUnits.ts";
import { tableInUnits } from "#report/tables/tableInUnits.ts";

/** Digits that the interval of a long study supports. */
const shownDigits = 5;

/** A date does not wrap at its hyphens. */
const isDate = /^\d{4}-\d{2}-\d{2}$/u;

interface TableOptions {
  readonly id: string;
  /** Name of the CSV file with the same rows, if there is one. */
  readonly file?: string;
  /** Of rows that name their unit; SI where absent. */
  readonly units?: UnitSystem;
  /** Folded until the reader opens it where absent. */
  readonly isOpen?: boolean;
}

export function tableMarkup(table: Table, options: TableOptions): Markup {
  const { columns, rows } = tableInUnits(table, options.units ?? "si");
  const digits = options.units === "us" ? "all digits in SI units" : "all digits";
  const origin = options.file === undefined ? table.name.replaceAll("-", " ") : `${digits} in ${options.file}.csv`;
  const summary = `Numbers: ${origin}, ${rows.length} ${rows.length === 1 ? "row" : "rows"}`;
  const looks = columns.map((column) => (isNumber(column) ? "number" : "text"));
  return element(
    "details",
    options.isOpen === true ? { open: "" } : {},
    element("summary", {}, summary),
    element(
      "div",
      { class: "numbers", tabindex: "0", role: "region", "aria-label": `${options.id.replaceAll("-", " ")}, numbers` },
      element(
        "table",
        { id: `${options.id}-numbers` },
        element("caption", {}, table.meaning),
        element("thead", {}, element("tr", {}, columns.map(heading))),
        element(
          "tbody",
          {},
          rows.map((row) => rowOf(row.map((cell, i) => cellMarkup(cell, looks[i])))),
        ),
      ),
    ),
  );
}

function heading(column: ColumnSpec): Markup {
  return element(
    "th",
    { scope: "col", class: isNumber(column) ? "number" : undefined, title: column.meaning },
    column.name.replaceAll("_", " "),
  );
}

const rowOf = alike("tr", {});
const cellOf = {
  text: alike("td", {}),
  number: alike("td", { class: "number" }),
  date: alike("td", { class: "date" }),
};

function cellMarkup(cell: Cell, look: keyof typeof cellOf = "text"): Markup {
  if (typeof cell === "string") return cellOf[isDate.test(cell) ? "date" : look](spokenUnit(cell));
  if (typeof cell !== "number") return cellOf[look](cell === null ? "" : String(cell));
  return cellOf[look](element("data", { value: csvNumber(cell) }, shown(cell)));
}

function shown(value: number): string {
  // Most values are short counts.
  if (Number.isInteger(value) && Math.abs(value) < 1e5) return String(value);
  return String(Number(value.toPrecision(shownDigits)));
}

function isNumber({ type }: ColumnSpec): boolean {
  return type === "number" || type === "integer";
}

/** The rows of one scenario, without the column that names it. */
export function rowsOfScenario(table: Table, scenario: string): Table {
  const at = table.columns.findIndex(({ name }) => name === "scenario");
  const without = <Item>(items: readonly Item[]): readonly Item[] => items.filter((_, i) => i !== at);
  return {
    ...table,
    columns: without(table.columns),
    rows: table.rows.filter((row) => row[at] === scenario).map(without),
  };
}
