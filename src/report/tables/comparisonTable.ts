// Fills the table of a comparison: every measure of each scenario against the base.
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import { fillTable, type Table } from "./table.ts";
import { comparisonSpec } from "./tableSpecs.ts";

export function comparisonTable(rows: readonly ComparisonRow[]): Table {
  return fillTable(
    comparisonSpec,
    rows.map((row) => [
      row.base,
      row.other,
      row.resource,
      row.measure,
      row.unit,
      row.difference,
      row.halfWidth,
      row.simultaneousHalfWidth,
      row.comparisons,
      row.comparisons > 1 && row.halfWidth !== null ? "Bonferroni" : null,
      row.ratio,
      row.pairs,
      row.correlation,
      row.verdict,
    ]),
  );
}
