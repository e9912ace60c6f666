// What one change of the cell buys and the lost parts by cause, as bars and tables.
import type { Study } from "#analysis/study/study.ts";
import { gainBars, lostBars } from "#report/charts/gainBars.ts";
import { changesTables } from "#report/tables/asked/changesTable.ts";
import { lostTables } from "#report/tables/asked/lostTable.ts";
import { percent } from "#report/words/digits.ts";
import type { Section } from "./htmlPage.ts";
import { numbers, pictured } from "./pictured.ts";
import type { Placing } from "./reported.ts";

export function changesSections(study: Study, { id, of, units }: Placing): readonly Section[] {
  const { changes } = study;
  if (changes === undefined) return [];
  const rows = changes.rows.map(({ name, gain, relativeGain }) => ({
    label: name,
    value: gain.mean,
    halfWidth: gain.halfWidth,
    note: relativeGain === null ? "" : percent(Math.abs(relativeGain)),
  }));
  return changesTables([study]).map((table) =>
    pictured({
      id: `${id}-changes`,
      heading: `What one change buys${of}`,
      description: `Gain of each change in ${changes.unit} with its 95 % interval, the largest first.`,
      picture: (words) => gainBars(rows, changes.unit, words),
      caption: [
        "The same cell with one change, run with the same random numbers. The cost of the change is not in it.",
      ],
      tables: [numbers(table, study, { id, units })],
    }),
  );
}

export function lostSections(study: Study, { id, of, units }: Placing): readonly Section[] {
  const { lost } = study;
  if (lost === undefined) return [];
  const rows = lost.rows.map(({ cause, parts, halfWidth, share }) => ({
    label: cause,
    value: parts,
    halfWidth,
    note: share === null ? "" : percent(Math.abs(share)),
  }));
  return lostTables([study]).map((table) =>
    pictured({
      id: `${id}-lost`,
      heading: `Lost parts${of}`,
      description: `Lost ${lost.unit} by cause with 95 % intervals, the largest first.`,
      picture: (words) => lostBars(rows, lost.unit, words),
      caption: [
        `The causes add up from the ${study.ideal.method === "order found by running" ? "cell at mean times" : "ideal cycle"} in the planned time to the good parts made. A cause counts the parts that the same cell makes without it.`,
      ],
      tables: [numbers(table, study, { id, units })],
    }),
  );
}
