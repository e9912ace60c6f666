// Output against each kind of cost in which the layouts differ, as a chart with its numbers.
import type { Choice, RankedLayout } from "#analysis/choice/choiceResult.ts";
import { investmentOf } from "#analysis/choice/layout.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { figure } from "#report/charts/chart.ts";
import type { Section } from "#report/page/htmlPage.ts";
import { tableMarkup } from "#report/page/tableMarkup.ts";
import type { Table } from "#report/tables/table.ts";
import { efficientSentence, nameOf } from "./choiceSentences.ts";
import { partsUnit } from "./criterionWords.ts";
import { efficiencyChart, type CostPoint } from "./efficiencyChart.ts";

interface Kind {
  readonly key: keyof RankedLayout["efficiency"];
  readonly id: string;
  readonly heading: string;
  /** Behind the currency. */
  readonly unit: string;
  readonly costOf: (ranked: RankedLayout) => number | null;
  readonly columns: readonly string[];
}

const kinds: readonly Kind[] = [
  {
    key: "investment",
    id: "output-investment",
    heading: "Output against investment",
    unit: "investment",
    costOf: ({ layout }) => investmentOf(layout),
    columns: ["investment", "efficient_by_investment"],
  },
  {
    key: "perHour",
    id: "output-cost",
    heading: "Output against cost of an hour",
    unit: "an hour",
    costOf: ({ costPerHour }) => costPerHour?.mean ?? null,
    columns: ["cost_per_hour", "efficient_by_cost"],
  },
];

export function efficiencySections(choice: Choice, table: Table, units: UnitSystem): readonly Section[] {
  return kinds.flatMap((kind) => {
    const points = pointsOf(choice, kind);
    return new Set(points.map(({ cost }) => cost)).size < 2 ? [] : [sectionOf(choice, kind, { points, table, units })];
  });
}

function pointsOf(choice: Choice, { key, costOf }: Kind): readonly CostPoint[] {
  const { factor } = partsUnit(choice);
  return choice.ranking.flatMap((ranked) => {
    const [cost, isEfficient, made] = [costOf(ranked), ranked.efficiency[key], ranked.goodParts];
    if (cost === null || isEfficient === null || !made) return [];
    const output = { output: made.mean * factor, halfWidth: (made.halfWidth ?? 0) * factor };
    return [{ name: nameOf(ranked), cost, ...output, isEfficient, isBest: ranked.verdict === "best" }];
  });
}

interface Drawn {
  readonly points: readonly CostPoint[];
  readonly table: Table;
  readonly units: UnitSystem;
}

function sectionOf(
  choice: Choice,
  { key, id, heading, unit, columns }: Kind,
  { points, table, units }: Drawn,
): Section {
  const { words } = partsUnit(choice);
  const cost = `${choice.ranking[0]?.layout.scenario.costs?.currency ?? ""} ${unit}`;
  const description = `${words} over ${cost}: a point for each layout; a line joins the layouts that make the most for their cost.`;
  const caption = [
    `${efficientSentence(choice, key)} `,
    "Filled points on the line (Pareto set): no layout makes as many good parts for less. The ring is the best layout. ",
    "Vertical lines are intervals that hold for all layouts together.",
    choice.goal.need ? " Layouts that cannot meet the need are left out." : "",
  ];
  const picture = efficiencyChart(points, { cost, output: words }, { id: `${id}-chart`, title: heading, description });
  const numbers = withColumns(table, ["scenario", "verdict", "good_parts_per_hour", ...columns]);
  return {
    id,
    heading,
    body: [figure(heading, { picture, caption, table: tableMarkup(numbers, { id, file: "choose", units }) })],
  };
}

function withColumns({ columns, rows, ...table }: Table, names: readonly string[]): Table {
  const places = names.map((name) => columns.findIndex((column) => column.name === name));
  return {
    ...table,
    columns: places.map((place) => columns[place]!),
    rows: rows.map((row) => places.map((place) => row[place] ?? null)),
  };
}
