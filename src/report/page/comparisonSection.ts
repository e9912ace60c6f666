// The sections of a comparison: the layouts side by side, and every difference with its interval.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { COST_AN_HOUR, COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import type { Comparison, ComparisonRow } from "#analysis/study/comparison.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { comparisonChart } from "#report/charts/comparisonChart.ts";
import { figure } from "#report/charts/chart.ts";
import { layoutChart } from "#report/charts/layoutChart.ts";
import { element, type Markup } from "#report/charts/markup.ts";
import { costRows, differenceNote, outputRows, pathRows } from "#report/answers/layoutTables.ts";
import { headline } from "#report/words/madeWords.ts";
import { comparisonTable } from "#report/tables/comparisonTable.ts";
import { paybackTables } from "#report/tables/paybackTable.ts";
import type { Section } from "./htmlPage.ts";
import { tableMarkup } from "./tableMarkup.ts";

/** The layouts in one chart, with their numbers beneath. */
export function layoutsSection(comparison: Comparison): Section {
  const heading = "The layouts";
  const { studies } = comparison;
  const description =
    "Good parts of each layout as a bar from zero with its 95 % interval, and how its stations spend their time, stacked to 100 %.";
  const tables = [outputRows(comparison), costRows(comparison), pathRows(studies)].filter((rows) => rows.length > 0);
  return {
    id: "layouts",
    heading,
    body: [
      figure(heading, {
        picture: layoutChart(studies, { id: "layouts-chart", title: heading, description }),
        caption: [
          [
            "Bars begin at zero; the line at a bar's end is the 95 % interval. Station times are means over the stations.",
          ],
          ...differenceNote(comparison).map((note) => ` ${note}`),
        ],
        table: element("div", {}, ...tables.map((rows, i) => sideBySide(rows, `Layouts, table ${i + 1}`))),
      }),
    ],
  };
}

function sideBySide([heading = [], ...rows]: ReturnType<typeof outputRows>, label: string): Markup {
  const head = heading.map((name, i) => element("th", { scope: "col" }, i === 0 ? "layout" : name));
  return element(
    "div",
    { class: "numbers", tabindex: "0", role: "region", "aria-label": label },
    element(
      "table",
      {},
      element("thead", {}, element("tr", {}, ...head)),
      element(
        "tbody",
        {},
        ...rows.map(([name = "", ...cells]) =>
          element("tr", {}, element("th", { scope: "row" }, name), ...cells.map((cell) => element("td", {}, cell))),
        ),
      ),
    ),
  );
}

/** Of many layouts comparison.csv has the other measures. */
const mainMeasures: readonly string[] = [headline, COST_AN_HOUR, COST_MEASURE];
const mostCharted = 2;

/** Every difference; of more than two layouts those in output and cost, without a chart. */
export function differencesSection({ studies, rows, paybacks }: Comparison, units: UnitSystem): Section {
  const bases = [...new Set(rows.map(({ base }) => base))];
  const heading = bases.length === 1 ? `Difference from ${bases[0]}` : "Differences";
  const payback = paybackTables(paybacks).map((table) => tableMarkup(table, { id: "payback", file: "payback", units }));
  const isCharted = studies.length <= mostCharted;
  const shown = isCharted
    ? rows
    : rows.filter(({ resource, measure }) => resource === CELL && mainMeasures.includes(measure));
  const table = element(
    "div",
    {},
    tableMarkup(comparisonTable(shown), { id: "comparison", file: "comparison", units }),
    ...payback,
  );
  const body = isCharted ? differenceFigure(rows, { heading, table }, units) : table;
  return { id: "comparison-section", heading, body: [body] };
}

function differenceFigure(
  rows: readonly ComparisonRow[],
  { heading, table }: { readonly heading: string; readonly table: Markup },
  units: UnitSystem,
): Markup {
  const description = `${heading}: the cell's measures in percent of the base, with intervals that hold together with 95 % confidence.`;
  const picture = comparisonChart(rows, { id: "comparison-chart", title: heading, description }, units);
  const caption = [
    "Replications are paired by common random numbers. ",
    "The intervals hold together with 95 % confidence; an interval that includes 0 % shows no difference.",
  ];
  return figure(heading, { picture, caption, table });
}
