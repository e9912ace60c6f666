// The report of a sweep: one chart a measure, all points as a table, and the points that were refused.
import type { Issue } from "#foundation/issue.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { finding, notes } from "#report/answers/sweepAnswer.ts";
import { headline } from "#report/words/madeWords.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { COST_AN_HOUR, COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import { figure } from "#report/charts/chart.ts";
import { sweepChart, sweepLines } from "#report/charts/sweepChart.ts";
import { sweepTable, type Sweep } from "#report/tables/asked/sweepTable.ts";
import { settingsWords } from "#report/words/settingsWords.ts";
import { htmlPage, type Section } from "./htmlPage.ts";
import { tableMarkup } from "./tableMarkup.ts";

export interface SweepPageParts {
  readonly version: string;
  readonly sweep: Sweep;
  readonly scenario: Scenario;
  readonly refused: readonly Issue[];
  readonly warnings: readonly Issue[];
  readonly units: UnitSystem;
}

const mostPointsShown = 500;

const charted: readonly string[] = [headline, "seconds per shot", "reject share", COST_MEASURE, COST_AN_HOUR];

export function sweepPage({ version, sweep, scenario, refused, warnings, units }: SweepPageParts): string {
  const found = sweep.points.flatMap(({ values, outcome }) => (outcome.kind === "found" ? [{ values, outcome }] : []));
  const output = ({ outcome }: (typeof found)[number]): number =>
    outcome.measures.find(({ resource, measure }) => resource === CELL && measure === headline)?.mean ?? 0;
  const most = found.toSorted((one, other) => output(other) - output(one));
  return htmlPage({
    version,
    title: `${scenario.title}: sweep over ${sweep.paths.join(" and ")}`,
    questions: settingsWords(scenario),
    finding: [...finding(most, sweep), ...notes(sweep, found, scenario, units)],
    warnings: { warnings: [...refused, ...warnings].map(({ message, remedy }) => `${message} ${remedy}`), unusual: [] },
    sections: charted.flatMap((measure) => chartSection(sweep, measure, units)),
  });
}

/** None where no point has the measure. */
function chartSection(sweep: Sweep, measure: string, units: UnitSystem): readonly Section[] {
  const drawn = sweepLines(sweep, measure);
  if (drawn === undefined) return [];
  const id = measure.replaceAll(/[^a-z0-9]+/gu, "-");
  const heading = `${measure.charAt(0).toUpperCase()}${measure.slice(1)}`;
  const all = sweepTable(sweep);
  const [at, by] = ["resource", "measure"].map((name) => all.columns.findIndex((column) => column.name === name));
  const rows = all.rows.filter((row) => row[at ?? 0] === CELL && row[by ?? 0] === measure);
  // Of more points the file has the numbers.
  const shown = rows.slice(0, mostPointsShown);
  const description = `${heading} over ${drawn.label}: a line for each combination of the other values, with 95 % intervals.`;
  return [
    {
      id,
      heading,
      body: [
        figure(heading, {
          picture: sweepChart(drawn, { id: `${id}-chart`, title: heading, description }),
          caption: [drawn.caption],
          table: tableMarkup({ ...all, rows: shown }, { id, file: "sweep", units }),
        }),
      ],
    },
  ];
}
