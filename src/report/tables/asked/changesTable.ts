// The table of changes: what its columns mean, and how a study fills it.
import type { Study } from "#analysis/study/study.ts";
import { halfWidth, integer, number, scenarioColumn, text } from "#report/tables/columns.ts";
import { fillTable, type Table, type TableSpec } from "#report/tables/table.ts";

export const changesSpec: TableSpec = {
  name: "changes",
  meaning:
    "What one change of the cell buys, the largest gain first: the same replications with and without the change, paired by common random numbers.",
  columns: [
    scenarioColumn,
    text("change", "The change, in plain words"),
    text("counted", "What good parts and gains are: good parts per hour, with a calendar good parts in the run"),
    number("good_parts", "Mean of the changed cell; rare stops count as they occurred, without control"),
    number("gain", "Mean of changed cell − cell over the pairs"),
    halfWidth("gain_half_width_95", "the gain"),
    number(
      "simultaneous_half_width_95",
      "Half width at which the gains of all rows hold together with 95 % confidence",
    ),
    number("relative_gain", "gain / good parts of the cell in the same replications"),
    number(
      "cost_difference",
      "Changed cell − cell, cost of 1,000 good parts; below 0: cheaper. Empty without rates, or where the items differ. What the change itself costs is not in it",
    ),
    halfWidth("cost_half_width_95", "the cost difference"),
    text("currency", "Currency of the cost difference"),
    text("then_sets_the_pace", "Resource with the largest share of the critical path after the change"),
    integer("pairs", "Replications of the cell that were run again with the change"),
    text("verdict", "What the simultaneous interval says, in words"),
    text("settings", "Values of `--set` that make the change, separated by semicolons"),
    text(
      "repeat",
      "The call that repeats the changed cell exactly, with warm-up and replications; options of the call itself come before",
    ),
  ],
};

/** None where no change was run. */
export function changesTables(studies: readonly Pick<Study, "scenario" | "changes">[]): readonly Table[] {
  const rows = studies.flatMap(({ scenario, changes }) =>
    (changes?.rows ?? []).map(({ gain, costPerThousand, ...row }) => [
      scenario.name,
      row.name,
      changes!.unit,
      row.good,
      gain.mean,
      gain.halfWidth,
      row.simultaneousHalfWidth,
      row.relativeGain,
      costPerThousand?.mean ?? null,
      costPerThousand?.halfWidth ?? null,
      costPerThousand && changes!.currency,
      row.paceSetter?.resources.join(", ") ?? null,
      gain.count,
      row.verdict,
      row.settings.join("; "),
      `blowcell run FILE ${row.options}`,
    ]),
  );
  return rows.length === 0 ? [] : [fillTable(changesSpec, rows)];
}
