// What one change of the cell buys, as a table.
import type { Study } from "#analysis/study/study.ts";
import { changesTables } from "#report/tables/changesTable.ts";
import { element } from "#report/charts/markup.ts";
import type { Section } from "./htmlPage.ts";
import type { Placing } from "./reported.ts";
import { tableMarkup } from "./tableMarkup.ts";

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
        tableMarkup(table, { id: `${id}-changes-table` }),
      ],
    },
  ];
}
