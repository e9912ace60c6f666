// The table of lost parts: what its columns mean, and how a study fills it.
import type { Study } from "#analysis/study/study.ts";
import { halfWidth, number, scenarioColumn, text } from "#report/tables/columns.ts";
import { fillTable, type Table, type TableSpec } from "#report/tables/table.ts";

export const lostSpec: TableSpec = {
  name: "lost",
  meaning:
    "Parts that were not made because of one cause; the causes add up to the difference between the ideal cycle in the planned time and the good parts made. Only where the cell has stops, rejects, a calendar or planned changes.",
  columns: [
    scenarioColumn,
    text(
      "kind",
      "`ideal` for the parts of the ideal cycle, `made` for the good parts; for a cause `stop`, `start-up`, `break`, `change`, `reject`, `variation`, `together` or `takeaway`",
    ),
    text("cause", "The cause in plain words; empty for ideal and made"),
    text("counted", "What the parts are: parts per hour, with a calendar parts in the run"),
    number("parts", "Ideal or made parts, or parts lost to the cause; below 0: it adds parts"),
    halfWidth("parts_half_width_95", "the parts"),
    number("lost_share", "Parts lost to the cause / all lost parts; the shares of the causes add up to 1"),
  ],
};

/** The ideal first, then the causes, at last the parts made; none where nothing is lost but by times that vary. */
export function lostTables(studies: readonly Pick<Study, "scenario" | "lost">[]): readonly Table[] {
  const rows = studies.flatMap(({ scenario, lost }) =>
    lost === undefined
      ? []
      : [
          [scenario.name, "ideal", null, lost.unit, lost.ideal, null, null],
          ...lost.rows.map(({ kind, cause, parts, halfWidth: half, share }) => [
            scenario.name,
            kind,
            cause,
            lost.unit,
            parts,
            half,
            share,
          ]),
          [scenario.name, "made", null, lost.unit, lost.made, null, null],
        ],
  );
  return rows.length === 0 ? [] : [fillTable(lostSpec, rows)];
}
