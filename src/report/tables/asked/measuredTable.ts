// The table of the model against the real cell: what its columns mean, and how a study fills it.
import type { Study } from "#analysis/study/study.ts";
import { measuredRemedy } from "#report/words/measuredWords.ts";
import { halfWidth, measureColumn, number, scenarioColumn, text, unitColumn } from "#report/tables/columns.ts";
import { fillTable, type Table, type TableSpec } from "#report/tables/table.ts";

export const measuredSpec: TableSpec = {
  name: "measured",
  meaning:
    "One number that was measured at the real cell, against the model; with a calendar both on shift. Only where `measured` is given.",
  columns: [
    scenarioColumn,
    measureColumn,
    unitColumn,
    number("measured", "What was measured"),
    number("model", "The same of the model, mean over the replications"),
    halfWidth("half_width_95", "the model's mean"),
    number("single_low_90", "9 of 10 single runs of the model lie between this number and the next"),
    number("single_high_90", "Upper end of that range; empty with one replication"),
    number("relative_difference", "measured / model − 1"),
    text(
      "verdict",
      "`agrees` within 1 % or within the range of single runs; else whether the real cell is `slower` or `faster`",
    ),
    text("remedy", "What to enter or to check; empty where both agree"),
  ],
};

const measures = { shots: "shots per hour", parts: "good parts per hour", cycle: "cycle time" } as const;

/** None where nothing was measured. */
export function measuredTables(studies: readonly Study[]): readonly Table[] {
  const rows = studies.flatMap((study) =>
    study.measured.map((check) => {
      const { quantity, unit, measured, model, single, difference, verdict } = check;
      const range = [single?.low ?? null, single?.high ?? null];
      const found = [measured, model.mean, model.halfWidth, ...range, difference];
      return [study.scenario.name, measures[quantity], unit, ...found, verdict, measuredRemedy(check, study)];
    }),
  );
  return rows.length === 0 ? [] : [fillTable(measuredSpec, rows)];
}
