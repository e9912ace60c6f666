// The comparison of scenarios: the differences from the base with their intervals, and all their numbers.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import { comparisonChart } from "#report/charts/comparisonChart.ts";
import { comparisonTable } from "#report/tables/comparisonTable.ts";
import { figure } from "#report/charts/chart.ts";
import type { Section } from "./htmlPage.ts";
import { tableMarkup } from "./tableMarkup.ts";

export function comparisonSection(rows: readonly ComparisonRow[], units: UnitSystem): Section {
  const base = rows[0]?.base ?? "";
  const heading = `Difference from ${base}`;
  const description = `Differences of the cell's measures from ${base}, in percent of it, with intervals that hold together with 95 % confidence.`;
  const picture = comparisonChart(rows, { id: "comparison-chart", title: heading, description }, units);
  const caption = [
    "Replications are paired by common random numbers. ",
    "The intervals hold together with 95 % confidence; an interval that includes 0 % shows no difference.",
  ];
  const table = tableMarkup(comparisonTable(rows), { id: "comparison", file: "comparison", units });
  return { id: "comparison-section", heading, body: [figure(heading, { picture, caption, table })] };
}
