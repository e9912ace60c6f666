// The calendar section of a report: the plan, and what the stations did day by day.
import { dayUses } from "#cell/records/quarterRecord.ts";
import type { CalendarStudy } from "#analysis/study/calendarStudy.ts";
import type { Study } from "#analysis/study/study.ts";
import { calendarChart } from "#report/charts/calendar/calendarChart.ts";
import { planTable } from "#report/tables/calendarPlan.ts";
import { calendarRows } from "#report/charts/calendar/calendarRows.ts";
import { calendarTables } from "#report/tables/calendarTable.ts";
import { figure } from "#report/charts/chart.ts";
import { percent } from "#report/words/digits.ts";
import type { Section } from "./htmlPage.ts";
import { element } from "#report/charts/markup.ts";
import type { Placing } from "./reported.ts";
import { rowsOfScenario, tableMarkup } from "./tableMarkup.ts";

/** None where nothing is planned. */
export function calendarSections(study: Study, { id, of }: Placing): readonly Section[] {
  const { scenario, calendar } = study;
  if (!calendar) return [];
  const heading = `${scenario.calendar ? "Calendar" : "Planned changes"}${of}`;
  const plan = tableMarkup(planTable(study), { id: `${id}-plan` });
  if (calendar.days.length === 0) return [{ id: `${id}-calendar`, heading, body: [plan] }];
  const found = shiftWords(calendar);
  const words = { id: `${id}-calendar-chart`, title: heading, description: `${howToRead(study, calendar)} ${found}` };
  const tables = calendarTables([study]).map((table) =>
    tableMarkup(rowsOfScenario(table, scenario.name), { id: `${id}-calendar`, file: table.name }),
  );
  const picture = calendarChart(study, words);
  const caption = [`${found} ${howToRead(study, calendar)}`];
  const numbers = figure(heading, { picture, caption, table: element("div", {}, plan, ...tables) });
  return [{ id: `${id}-calendar`, heading, body: [numbers] }];
}

/** What the stations did while they were not off. */
function shiftWords({ days }: CalendarStudy): string {
  const all = days.reduce((sum, { seconds }) => sum + seconds, 0);
  const total = (use: number): number => days.reduce((sum, { useSeconds }) => sum + useSeconds[use]!, 0);
  const off = total(dayUses.indexOf("off"));
  const shares = dayUses
    .map((use, i) => ({ use, share: total(i) / (all - off) }))
    .filter(({ use, share }) => use !== "off" && share > 0)
    .map(({ use, share }) => `${use} ${percent(share)}`);
  return `The cell is off ${percent(off / all)} of the time; of the remaining time a station spends: ${shares.join(", ")}.`;
}

function howToRead({ scenario, replications }: Study, calendar: CalendarStudy): string {
  const { unit, rows, left } = calendarRows(calendar);
  const step = unit === "day" ? "a quarter of an hour" : "two hours";
  const many = unit === "day" ? "" : `, since ${calendar.days.length} days do not fit`;
  const stations =
    scenario.stations.length === 1 ? "the station" : `the ${scenario.stations.length} stations on average`;
  const made =
    replications === 1
      ? ""
      : ` Good parts are means of ${replications} replications${unit === "day" ? ", with the 95 % interval" : ""}.`;
  const rest = left === 0 ? "" : ` The chart shows the first ${rows.length} weeks, the table all days.`;
  return (
    `One row a ${unit}${many}, in local wall time: the narrow band is the plan, the bar below it is what ${stations} did, ` +
    `${step} a step, in replication 1.${made}${rest}`
  );
}
