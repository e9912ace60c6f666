// Adds to every table the column `variant`: the settings of the call that changed the scenario of a row.
import type { Scenario } from "#scenario/scenario.ts";
import { variantOf } from "#scenario/variantOf.ts";
import { text } from "./columns.ts";
import type { Cell, LongTable, Table, TableSpec } from "./table.ts";

const variantColumn = text(
  "variant",
  "Settings of the call that changed the scenario of this row, in a comparison the other one; empty where the file is as it stands",
);

/** The column that names the scenario of a row; -1 where a table has one scenario only. */
function namingColumn({ columns }: TableSpec): number {
  return columns.findIndex(({ name }) => name === "scenario" || name === "other");
}

export function withVariantColumn<Spec extends TableSpec>(spec: Spec): Spec {
  return { ...spec, columns: spec.columns.toSpliced(namingColumn(spec) + 1, 0, variantColumn) };
}

/** Tables of no scenario stay as they are. */
export function withVariants<Kind extends Table | LongTable>(
  tables: readonly Kind[],
  scenarios: readonly Scenario[],
): readonly Kind[] {
  const [first] = scenarios;
  if (first === undefined) return tables;
  const variants = new Map(scenarios.map((scenario) => [scenario.name, variantOf(scenario)]));
  return tables.map((table) => {
    const at = namingColumn(table);
    const filled = (row: readonly Cell[]): readonly Cell[] =>
      row.toSpliced(at + 1, 0, variants.get(at === -1 ? first.name : String(row[at])) ?? "");
    const spec = withVariantColumn(table);
    return "rows" in spec
      ? { ...spec, rows: spec.rows.map(filled) }
      : { ...spec, batches: filledBatches(spec.batches, filled) };
  });
}

function* filledBatches(
  batches: LongTable["batches"],
  filled: (row: readonly Cell[]) => readonly Cell[],
): Generator<Table["rows"]> {
  for (const rows of batches) yield rows.map(filled);
}
