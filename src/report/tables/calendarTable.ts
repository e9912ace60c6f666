// The table of a calendar's days: what its columns mean, and how a study fills it.
import { dayUses } from "#cell/records/quarterRecord.ts";
import type { DaySummary } from "#analysis/study/calendarStudy.ts";
import type { Study } from "#analysis/study/study.ts";
import { halfWidth, number, scenarioColumn, text } from "./columns.ts";
import { fillTable, type Cell, type Table, type TableSpec } from "./table.ts";

const meanings: Readonly<Record<(typeof dayUses)[number], string>> = {
  working: "Time in which a station works",
  waiting: "Time in which it waits, without start-up",
  stopped: "Time in which it is stopped or cleared",
  "start-up": "Time in which it waits while the screw heats up or purges after a rest",
  changeover: "Time in which mold, material or color are changed",
  off: "Time off shift, and in breaks that stop the cell",
};

export const calendarSpec: TableSpec = {
  name: "calendar",
  meaning:
    "One local day of the observed time: the plan, and the mean use of a station over stations and replications; only where the scenario has a calendar.",
  columns: [
    scenarioColumn,
    text("date", "Local date"),
    text("weekday", "Day of the week"),
    number("day_h", "Hours of the day that were observed; a day on which the clocks change has 23 or 25", "h"),
    number("shift_s", "Time in which a shift is planned", "s"),
    number("break_s", "Planned breaks of the operators of a shift", "s"),
    ...dayUses.map((use) => number(`${use.replaceAll("-", "_")}_s`, meanings[use], "s")),
    number("good_parts", "Good parts of the day, mean over the replications"),
    halfWidth("half_width_95", "the good parts"),
  ],
};

/** None where no scenario has a calendar. */
export function calendarTables(studies: readonly Pick<Study, "scenario" | "calendar">[]): readonly Table[] {
  const rows = studies.flatMap(({ scenario, calendar }) =>
    (calendar?.days ?? []).map((day) => [scenario.name, ...cells(day)]),
  );
  return rows.length === 0 ? [] : [fillTable(calendarSpec, rows)];
}

function cells(day: DaySummary): readonly Cell[] {
  const { date, weekday, seconds, shiftSeconds, breakSeconds, useSeconds, good } = day;
  return [date, weekday, seconds / 3600, shiftSeconds, breakSeconds, ...useSeconds, good.mean, good.halfWidth];
}
