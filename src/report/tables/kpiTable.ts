// The table of key performance indicators: what its columns mean, and how a study fills it.
import type { Study } from "#analysis/study/study.ts";
import { halfWidth, number, resourceColumn, scenarioColumn, text, unitColumn } from "./columns.ts";
import { fillTable, type Table, type TableSpec } from "./table.ts";

export const kpiSpec: TableSpec = {
  name: "kpi",
  meaning:
    "One key performance indicator of ISO 22400-2, or a quantity in its formula, of the cell or of one station; src/cell/README.md lists the time element of each state.",
  columns: [
    scenarioColumn,
    resourceColumn,
    text("kpi", "Name by the standard"),
    text("formula", "Its formula; for a quantity its symbol"),
    unitColumn,
    number("value", "Mean over the replications in which it is defined"),
    halfWidth("half_width_95", "the value"),
  ],
};

type WithKpis = Pick<Study, "scenario" | "kpis">;

/** `resources` of which kind; all where not given. */
export function kpiTable(studies: readonly WithKpis[], isShown: (resource: string) => boolean = () => true): Table {
  const rows = studies.flatMap(({ scenario, kpis }) =>
    kpis
      .filter(({ resource }) => isShown(resource))
      .map(({ resource, kpi, formula, unit, value }) => [
        scenario.name,
        resource,
        kpi,
        formula,
        unit,
        value.mean,
        value.halfWidth,
      ]),
  );
  return fillTable(kpiSpec, rows);
}
