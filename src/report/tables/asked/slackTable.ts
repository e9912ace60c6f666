// The table of tested slack: what its columns mean, and how a study fills it.
import type { Study } from "#analysis/study/study.ts";
import { halfWidth, integer, number, scenarioColumn, text } from "#report/tables/columns.ts";
import { fillTable, type Table, type TableSpec } from "#report/tables/table.ts";

export const slackSpec: TableSpec = {
  name: "slack",
  meaning:
    "How much longer one step may take, at all identical resources at once, before good parts per hour fall by 1 %. Written with `--slack`; found by bisection on runs with the same random numbers.",
  columns: [
    scenarioColumn,
    text("resource", "Resource, as the state times name it; identical ones together, separated by commas"),
    text("step", "Step that takes longer"),
    number(
      "tested_slack_s",
      "Seconds longer in each of its runs at which output falls by 1 %, mean over the pairs; empty where it did not fall",
      "s",
    ),
    halfWidth("half_width_95", "the tested slack", "s"),
    number("at_least_s", "Output fell by less than 1 % up to here in every pair", "s"),
    integer("pairs", "Number of paired replications"),
  ],
};

/** None where no slack was tested. */
export function slackTables(studies: readonly Pick<Study, "scenario" | "slack">[]): readonly Table[] {
  const rows = studies.flatMap(({ scenario, slack = [] }) =>
    slack.map(({ resources, step, seconds, atLeast, pairs }) => {
      const found = [seconds?.mean ?? null, seconds?.halfWidth ?? null];
      return [scenario.name, resources.join(", "), step, ...found, atLeast, pairs];
    }),
  );
  return rows.length === 0 ? [] : [fillTable(slackSpec, rows)];
}
