// The table of stops: what its columns mean, and how a study fills it.
import type { Study } from "#analysis/study/study.ts";
import { halfWidth, number, resourceColumn, scenarioColumn, text } from "./columns.ts";
import { fillTable, type Table, type TableSpec } from "./table.ts";

export const stopsSpec: TableSpec = {
  name: "stops",
  meaning: "One kind of stop of one resource; only where the scenario has stops.",
  columns: [
    scenarioColumn,
    resourceColumn,
    text("stop", "Name of the stop in the scenario"),
    number("count", "Stops that began in the observed time of a replication, mean; one that began before is left out"),
    halfWidth("count_half_width_95", "the count"),
    number("hours", "Time of the resource in this stop in a replication, mean", "h"),
    halfWidth("hours_half_width_95", "the hours", "h"),
    number(
      "mean_between_h",
      "Hours outside this stop for each one that began, over all replications; empty where there was none",
      "h",
    ),
    number(
      "mean_repair_h",
      "Mean time from the stop to its end, with the wait for the repair, over all that ended",
      "h",
    ),
    text("waits_for", "What its repair waits for before it begins; empty where it waits for nothing"),
    number(
      "mean_wait_h",
      "Mean time from the stop to the beginning of its repair, with the operator's walk, over all that began; empty where there was none",
      "h",
    ),
  ],
};

/** None where there are no stops. */
export function stopsTables(studies: readonly Pick<Study, "scenario" | "stops">[]): readonly Table[] {
  const rows = studies.flatMap(({ scenario, stops }) =>
    stops.map(({ resource, stop, count, hours, meanBetween, meanRepair, waitsFor, meanWait }) => [
      scenario.name,
      resource,
      stop,
      count.mean,
      count.halfWidth,
      hours.mean,
      hours.halfWidth,
      meanBetween,
      meanRepair,
      waitsFor,
      meanWait,
    ]),
  );
  return rows.length === 0 ? [] : [fillTable(stopsSpec, rows)];
}
