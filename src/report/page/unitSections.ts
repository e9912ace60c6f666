// The sections of a report for managers: indicators, cost and stops, each with its table.
import { elementRules, planRules } from "#cell/words/elementWords.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { CostRow, CostStudy } from "#analysis/indicators/costStudy.ts";
import type { Study } from "#analysis/study/study.ts";
import { figure } from "#report/charts/chart.ts";
import { costTables } from "#report/tables/costTable.ts";
import { costWords, missingCostWords } from "#report/words/costWords.ts";
import { percent, withInterval } from "#report/words/digits.ts";
import type { Section } from "./htmlPage.ts";
import { kpiTable } from "#report/tables/kpiTable.ts";
import { element, type Markup } from "#report/charts/markup.ts";
import { rankedBars, type RankedBar } from "#report/charts/rankedBars.ts";
import type { Placing } from "./reported.ts";
import { stopsTables } from "#report/tables/stopsTable.ts";
import type { Table } from "#report/tables/table.ts";
import { rowsOfScenario, tableMarkup } from "./tableMarkup.ts";

/** Open where a section has no picture. */
function numbers(table: Table, { scenario }: Study, id: string, isOpen = false): Markup {
  return tableMarkup(rowsOfScenario(table, scenario.name), { id, file: table.name, isOpen });
}

export function kpiSection(study: Study, { id, of }: Placing): Section {
  const mapping = elementRules
    .map(({ states, kind, element: into }) => `${states?.join(", ") ?? `other states that are ${kind}`}: ${into}`)
    .join("; ");
  // Without a calendar all time is planned.
  const byPlan = planRules.map(({ when, counts }) => `${when.replaceAll("`", "")}: ${counts}`).join("; ");
  const planned = study.scenario.calendar ? `; by the plan ${byPlan}; parts made in overtime count` : "";
  return {
    id: `${id}-kpi`,
    heading: `Key performance indicators${of}`,
    body: [
      element("p", {}, kpiWords(study)),
      element(
        "p",
        {},
        "The cell produces while any part of it works. A wait of one resource for another therefore lowers effectiveness, not ",
        `availability. A station's own waits lower its availability. Time elements of ISO 22400-2: ${mapping}${planned}.`,
      ),
      element("p", {}, "The cell:"),
      numbers(
        kpiTable([study], (resource) => resource === CELL),
        study,
        `${id}-kpi-cell`,
        true,
      ),
      element("p", {}, "The stations:"),
      numbers(
        kpiTable([study], (resource) => resource !== CELL),
        study,
        `${id}-kpi-stations`,
      ),
    ],
  };
}

function kpiWords({ kpis }: Study): string {
  const of = (name: string): string => {
    const found = kpis.find(({ resource, kpi }) => resource === CELL && kpi === name);
    return found ? `${name} ${withInterval(found.value, 100)} %` : `no ${name}`;
  };
  return `Of the cell: ${["OEE index", "availability", "effectiveness", "quality ratio"].map(of).join(", ")}.`;
}

export function costSections(study: Study, { id, of }: Placing): readonly Section[] {
  const { costs } = study;
  if (!costs) return [];
  const heading = `Cost of 1,000 good parts${of}`;
  const found = `${costWords(costs)}.`;
  const picture = costBars(costs, { id: `${id}-cost-chart`, title: heading, description: found });
  const left = missingCostWords(costs).map((line) => ` ${line}.`);
  const table = element("div", {}, ...costTables([study]).map((each) => numbers(each, study, `${id}-cost`)));
  return [{ id: `${id}-cost`, heading, body: [figure(heading, { picture, caption: [found, ...left], table })] }];
}

/** Items and credits, the largest first, then their sum: the cost of the headline. */
function costBars({ rows, total, currency }: CostStudy, words: Parameters<typeof rankedBars>[2]): Markup {
  const shownOf = ({ perHour, perThousand }: CostRow): CostRow["perHour"] =>
    (total.perThousand ? perThousand : perHour) ?? perHour;
  const barOf = (row: CostRow, fill: RankedBar["fill"]): RankedBar => {
    const { mean, halfWidth } = shownOf(row);
    const sign = mean < 0 ? "−" : "";
    const amount = withInterval({ mean: Math.abs(mean), halfWidth });
    const remark = `${sign}${amount} ${currency}, ${sign}${percent(Math.abs(row.share ?? 0))}`;
    return { name: mean < 0 ? `${row.item} (credit)` : row.item, fill, value: mean, halfWidth, remark };
  };
  const items = rows
    .filter((row) => shownOf(row).mean !== 0)
    .toSorted((one, other) => shownOf(other).mean - shownOf(one).mean)
    .map((row) => barOf(row, shownOf(row).mean < 0 ? "good" : "melt"));
  const per = total.perThousand ? "per 1,000 good parts" : "an hour";
  return rankedBars([...items, barOf(total, "planned")], { label: `${currency} ${per}`, tick: String }, words);
}

export function stopsSections(study: Study, { id, of }: Placing): readonly Section[] {
  return stopsTables([study]).map((table) => ({
    id: `${id}-stops`,
    heading: `Stops${of}`,
    body: [numbers(table, study, `${id}-stops`, true)],
  }));
}
