// The steps of the crew in circuits and bottlenecks.
import type { CellStep } from "#cell/words/cellTable.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";

export const CREW = "crew";

/** Steps of every cycle during which an operator is busy: removal and packing, and the walks there. */
export function isByOperator({ task }: Pick<CellStep, "task">): boolean {
  return task === "removal" || task === "packing";
}

/** The number of stations and places that may call for an operator in every cycle. */
export function callers(scenario: Scenario): number {
  const packing = takeawayGroups(scenario).filter(({ server }) => server.by === "operator");
  const places = packing.reduce((sum, group) => sum + group.places.length, 0);
  return scenario.stations.filter(({ remove }) => remove.by === "operator").length + places;
}
