// A section of a page that is one picture with its caption and its tables.
import type { Study } from "#analysis/study/study.ts";
import { figure, type ChartWords, type FigureParts } from "#report/charts/chart.ts";
import { element, type Markup } from "#report/charts/markup.ts";
import type { Table } from "#report/tables/table.ts";
import type { Section } from "./htmlPage.ts";
import type { Placing } from "./reported.ts";
import { rowsOfScenario, tableMarkup } from "./tableMarkup.ts";

interface Pictured extends Pick<FigureParts, "caption"> {
  readonly id: string;
  readonly heading: string;
  readonly description: string;
  readonly picture: (words: ChartWords) => FigureParts["picture"];
  readonly tables: readonly Markup[];
}

export function pictured({ id, heading, description, picture, caption, tables }: Pictured): Section {
  const words = { id: `${id}-chart`, title: heading, description };
  return {
    id,
    heading,
    body: [figure(heading, { picture: picture(words), caption, table: element("div", {}, ...tables) })],
  };
}

/** The rows of one study in a table of results. */
export function numbers(table: Table, { scenario }: Study, { id, units }: Pick<Placing, "id" | "units">): Markup {
  return tableMarkup(rowsOfScenario(table, scenario.name), { id: `${id}-${table.name}`, file: table.name, units });
}
