// The table of totals: what its columns mean, and how a study fills it.
import type { Study } from "#analysis/study/study.ts";
import { halfWidth, integer, number, scenarioColumn, text } from "#report/tables/columns.ts";
import { fillTable, type Table, type TableSpec } from "#report/tables/table.ts";

export const totalsSpec: TableSpec = {
  name: "totals",
  meaning: "Good parts in the whole observed time, all together and by product; only with a calendar.",
  columns: [
    scenarioColumn,
    text("product", "Product; empty for all products together"),
    number("good_parts", "Good parts in the whole observed time, mean over the replications"),
    halfWidth("half_width_95", "that mean"),
    number("single_low_90", "9 of 10 single runs of this length lie between this number and the next"),
    number("single_high_90", "Upper end of that range; empty with one replication"),
    text("single_method", "How the range was found: `order statistics`, or `Student's t` below 19 replications"),
    integer("replications", "Number of replications"),
  ],
};

/** None without a calendar. */
export function totalsTables(studies: readonly Pick<Study, "scenario" | "totals">[]): readonly Table[] {
  const rows = studies.flatMap(({ scenario, totals }) =>
    totals.map(({ product, parts, single }) => {
      const range = [single?.low ?? null, single?.high ?? null, single?.method ?? null];
      return [scenario.name, product, parts.mean, parts.halfWidth, ...range, parts.count];
    }),
  );
  return rows.length === 0 ? [] : [fillTable(totalsSpec, rows)];
}
