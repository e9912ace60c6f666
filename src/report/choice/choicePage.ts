// The report of a choice: the answer, the ranking, output against cost as a chart, and the layouts with their settings.
import type { RankedLayout } from "#analysis/choice/choiceResult.ts";
import { investmentOf } from "#analysis/choice/layout.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { figure } from "#report/charts/chart.ts";
import { element, type Markup } from "#report/charts/markup.ts";
import { htmlPage, type Section } from "#report/page/htmlPage.ts";
import { tableMarkup } from "#report/page/tableMarkup.ts";
import { chooseTable } from "#report/tables/asked/chooseTable.ts";
import type { Table } from "#report/tables/table.ts";
import { variantOf } from "#scenario/variantOf.ts";
import { rankingRows, type ChoiceAnswer } from "./chooseAnswer.ts";
import {
  choiceSentence,
  efficientSentence,
  nameOf,
  needWords,
  procedureSentences,
  rareSentences,
  simplerSentences,
  withinSentences,
} from "./choiceSentences.ts";
import { partsUnit } from "./criterionWords.ts";
import { efficiencyChart, type CostPoint } from "./efficiencyChart.ts";

export interface ChoicePageParts extends ChoiceAnswer {
  readonly version: string;
  readonly warnings: readonly string[];
  readonly units: UnitSystem;
}

const mostRows = 100;

export function choicePage({ version, warnings, units, ...answer }: ChoicePageParts): string {
  const { choice, leftOut, usesDefault } = answer;
  const [first] = choice.ranking;
  const table = chooseTable(choice, leftOut);
  const need = needWords(choice);
  return htmlPage({
    version,
    title: `${first?.layout.scenario.title ?? ""}: which layout is best?`,
    questions: need === "" ? [] : [`Needed: ${need}.`],
    finding: [choiceSentence(choice, units), ...withinSentences(choice, units), ...simplerSentences(choice)],
    warnings: { warnings: [...warnings, ...rareSentences(choice)], unusual: [] },
    sections: [
      {
        id: "ranking",
        heading: "The ranking",
        body: [
          rankingMarkup(rankingRows(choice, units, mostRows)),
          ...procedureSentences(choice, units, usesDefault).map((sentence) => element("p", {}, sentence)),
          tableMarkup(table, { id: "choose", file: "choose", units }),
        ],
      },
      ...costSections(answer, table, units),
      layoutsSection(choice.ranking),
    ],
  });
}

/** A row a layout: rank, name, numbers, and the result in words. */
function rankingMarkup([heading = [], ...rows]: readonly (readonly string[])[]): Markup {
  const look = (i: number): string | undefined => (i === 1 || i === heading.length - 1 ? undefined : "number");
  return element(
    "div",
    { class: "numbers", tabindex: "0", role: "region", "aria-label": "The ranking of the layouts" },
    element(
      "table",
      {},
      element(
        "thead",
        {},
        element(
          "tr",
          {},
          heading.map((name, i) => element("th", { scope: "col", class: look(i) }, name)),
        ),
      ),
      element(
        "tbody",
        {},
        rows.map((cells) =>
          element(
            "tr",
            {},
            cells.map((cell, i) =>
              element(i === 1 ? "th" : "td", { scope: i === 1 ? "row" : undefined, class: look(i) }, cell),
            ),
          ),
        ),
      ),
    ),
  );
}

/** A chart for each kind of cost in which layouts differ. */
function costSections({ choice }: ChoiceAnswer, table: Table, units: UnitSystem): readonly Section[] {
  const { factor, words } = partsUnit(choice);
  const currency = choice.ranking[0]?.layout.scenario.costs?.currency ?? "";
  const kinds = [
    { key: "investment", of: ({ layout }: RankedLayout) => investmentOf(layout), cost: `investment, ${currency}` },
    { key: "perHour", of: (ranked: RankedLayout) => ranked.costPerHour?.mean ?? null, cost: `${currency} an hour` },
  ] as const;
  return kinds.flatMap(({ key, of, cost }) => {
    const points = choice.ranking.flatMap((ranked): readonly CostPoint[] => {
      const [amount, isEfficient] = [of(ranked), ranked.efficiency[key]];
      if (amount === null || isEfficient === null || !ranked.goodParts) return [];
      const { mean, halfWidth } = ranked.goodParts;
      const output = { output: mean * factor, halfWidth: (halfWidth ?? 0) * factor };
      return [{ name: nameOf(ranked), cost: amount, ...output, isEfficient, isBest: ranked.verdict === "best" }];
    });
    if (new Set(points.map((point) => point.cost)).size < 2) return [];
    const heading = key === "investment" ? "Output against investment" : "Output against cost of an hour";
    const description = `${words} over ${cost}: a point for each layout; a line joins the layouts that make the most for their cost.`;
    const id = `output-${key === "investment" ? "investment" : "cost"}`;
    const given = { id: `${id}-chart`, title: heading, description };
    const caption = [
      `${efficientSentence(choice, key)} `,
      "Filled points on the line (Pareto set): no layout makes as many good parts for less. The ring is the best layout. ",
      "Vertical lines are intervals that hold for all layouts together. Layouts that cannot meet a need are left out.",
    ];
    const picture = efficiencyChart(points, { cost, output: words }, given);
    return [
      {
        id,
        heading,
        body: [figure(heading, { picture, caption, table: tableMarkup(table, { id, file: "choose", units }) })],
      },
    ];
  });
}

function layoutsSection(ranking: readonly RankedLayout[]): Section {
  const rows = ranking.map((ranked) => {
    const variant = variantOf(ranked.layout.scenario);
    const file = ranked.layout.scenario.call?.file ?? "";
    return [nameOf(ranked), variant === "" ? `${file} as it stands` : `${file} with ${variant}`] as const;
  });
  const list = rows.flatMap(([name, words]) => [element("dt", {}, name), element("dd", {}, words)]);
  return { id: "layouts", heading: "The layouts", body: [element("dl", {}, ...list)] };
}
