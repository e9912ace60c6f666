// The table of a choice: what its columns mean, and how the ranking fills it.
import type { Choice, RankedLayout } from "#analysis/choice/choiceResult.ts";
import { investmentOf } from "#analysis/choice/layout.ts";
import { integer, measureColumn, number, scenarioColumn, text, truth, unitColumn } from "#report/tables/columns.ts";
import { fillTable, type Cell, type Table, type TableSpec } from "#report/tables/table.ts";

/** A point of `--vary` that was refused. */
export interface LeftOutLayout {
  readonly name: string;
  readonly reason: string;
}

const together = "holds for all layouts together with the confidence of the row";

export const chooseSpec: TableSpec = {
  name: "choose",
  meaning: "One layout of a choice, best first. Written by `choose` and by `sweep --best`.",
  columns: [
    { ...scenarioColumn, meaning: "Name of the layout: of its file, its option, its variant or its point" },
    integer("rank", "1 for the best; empty for a layout that was left out"),
    text(
      "verdict",
      "`best`, `equal to the best` to the last replication, `not decided`, `dropped` by another layout, `cannot meet the need` or `left out`",
    ),
    measureColumn,
    text("better", "`more` or `less` of the measure is better"),
    unitColumn,
    number("mean", "Mean of the measure over the replications of the layout"),
    number("half_width", `Half width of the interval of the mean; ${together}`),
    number("behind", "By how much the first layout is better, over the replications that both have"),
    number("behind_half_width", `Half width of the interval of that difference; ${together}`),
    number("worthwhile", "A smaller difference in the measure does not matter"),
    truth("within_worthwhile", "`true` where the interval of `behind` lies below `worthwhile`"),
    number("confidence", "Of the choice, from 0 to 1"),
    integer("dropped_at", "Replication at which another layout dropped it"),
    text("dropped_by", "The layout that led most over it then"),
    integer("replications", "Replications made of the layout"),
    integer("fixed_size_replications", "Replications of each layout that a selection of fixed size needs"),
    integer("need_met", "Replications that met the need, of those that its test used; empty without a need"),
    integer("need_tested", "Replications that the test of the need used"),
    number("good_parts_per_hour", "Mean of the good parts an hour", "1/h"),
    text("currency", "Unit of all amounts in this row"),
    number("cost_per_hour", "Mean cost of an hour, with that of the options"),
    number("cost_per_1000_good_parts", "Mean cost of a thousand good parts"),
    number("investment", "Investment of the cell and of the options"),
    number("floor_space_m2", "Floor space of the options", "m²"),
    integer("stations", "Number of stations"),
    truth("efficient_by_cost", "`true` where no layout makes as many good parts at a lower cost of an hour"),
    truth("efficient_by_investment", "`true` where no layout makes as many good parts for less investment"),
    text("note", "Why the layout was left out"),
  ],
};

export function chooseTable(choice: Choice, leftOut: readonly LeftOutLayout[]): Table {
  const width = chooseSpec.columns.length;
  const refused = leftOut.map(({ name, reason }): readonly Cell[] => [
    name,
    null,
    "left out",
    ...Array.from({ length: width - 4 }, () => null),
    reason,
  ]);
  return fillTable(chooseSpec, [...choice.ranking.map((ranked, i) => cells(ranked, i + 1, choice)), ...refused]);
}

function cells(ranked: RankedLayout, rank: number, { goal, worthwhile, spent }: Choice): readonly Cell[] {
  const { layout, verdict, value, behind, dropped, need, efficiency } = ranked;
  const { measure, better, unit, resource } = goal.criterion;
  const { costs, stations } = layout.scenario;
  return [
    layout.scenario.name,
    verdict === "left out" ? null : rank,
    verdict,
    resource === "cell" ? measure : `${resource}: ${measure}`,
    better,
    unit,
    value?.mean ?? null,
    value?.halfWidth ?? null,
    behind?.mean ?? null,
    behind?.halfWidth ?? null,
    worthwhile,
    ranked.isWithin,
    goal.confidence,
    dropped?.at ?? null,
    dropped?.by ?? null,
    ranked.replications,
    spent?.each ?? null,
    need?.met ?? null,
    need?.replications ?? null,
    ranked.goodParts?.mean ?? null,
    costs?.currency ?? null,
    ranked.costPerHour?.mean ?? null,
    ranked.costPerThousand?.mean ?? null,
    investmentOf(layout),
    layout.floorSpace,
    stations.length,
    efficiency.perHour,
    efficiency.investment,
    ranked.leftOut,
  ];
}
