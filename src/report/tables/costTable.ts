// The table of costs: what its columns mean, and how a study fills it.
import type { CostRow } from "#analysis/indicators/costStudy.ts";
import type { Study } from "#analysis/study/study.ts";
import { halfWidth, number, scenarioColumn, text } from "./columns.ts";
import { fillTable, type Cell, type Table, type TableSpec } from "./table.ts";

export const costSpec: TableSpec = {
  name: "cost",
  meaning:
    "One item of the cost of an hour and of a thousand good parts; only where the scenario gives costs, and only the items whose inputs are given. The last row of a scenario is the total.",
  columns: [
    scenarioColumn,
    text("item", "Cost item, or `total`; `surplus regrind` is a credit and negative"),
    text("unit", "Currency of the scenario"),
    number("per_hour", "Cost of an hour of the observed time, mean over the replications"),
    halfWidth("per_hour_half_width_95", "the cost of an hour"),
    number("per_1000_good_parts", "Cost of a thousand good parts, mean over the replications that made any"),
    halfWidth("per_1000_good_parts_half_width_95", "the cost of a thousand good parts"),
    number("share", "Part of the total of an hour, from 0 to 1"),
  ],
};

/** None where no scenario gives costs. */
export function costTables(studies: readonly Pick<Study, "scenario" | "costs">[]): readonly Table[] {
  const rows = studies.flatMap(({ scenario, costs }) =>
    costs ? [...costs.rows, costs.total].map((row) => cells(scenario.name, costs.currency, row)) : [],
  );
  return rows.length === 0 ? [] : [fillTable(costSpec, rows)];
}

function cells(scenario: string, currency: string, { item, perHour, perThousand, share }: CostRow): readonly Cell[] {
  return [
    scenario,
    item,
    currency,
    perHour.mean,
    perHour.halfWidth,
    perThousand?.mean ?? null,
    perThousand?.halfWidth ?? null,
    share,
  ];
}
