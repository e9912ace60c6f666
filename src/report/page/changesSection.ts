// What one change of the cell buys and the lost parts by cause, as tables.
import type { Study } from "#analysis/study/study.ts";
import { changesTables } from "#report/tables/asked/changesTable.ts";
import { lostTables } from "#report/tables/asked/lostTable.ts";
import { element } from "#report/charts/markup.ts";
import type { Section } from "./htmlPage.ts";
import type { Placing } from "./reported.ts";
import { rowsOfScenario, tableMarkup } from "./tableMarkup.ts";

export function changesSections(study: Study, { id, of }: Placing): readonly Section[] {
  const [table] = changesTables([study]);
  if (table === undefined) return [];
  return [
    {
      id: `${id}-changes`,
      heading: `What one change buys${of}`,
      body: [
        element(
          "p",
          {},
          "Each row is the same cell with one change, run with the same random numbers. What the change itself costs is not in it.",
        ),
        tableMarkup(rowsOfScenario(table, study.scenario.name), { id: `${id}-changes-table`, file: table.name }),
      ],
    },
  ];
}

export function lostSections(study: Study, { id, of }: Placing): readonly Section[] {
  return lostTables([study]).map((table) => ({
    id: `${id}-lost`,
    heading: `Lost parts${of}`,
    body: [
      element(
        "p",
        {},
        "From the parts of the ideal cycle in the planned time to the good parts made. A cause counts the parts that the same cell makes without it, with the same random numbers.",
      ),
      tableMarkup(rowsOfScenario(table, study.scenario.name), { id: `${id}-lost-table`, file: table.name }),
    ],
  }));
}
