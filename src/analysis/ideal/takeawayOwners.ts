// Who a step of the takeaway or of the crew belongs to, where circuits and bottlenecks are named.
import { walkTo } from "#cell/words/takeawayWords.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";

export const CREW = "crew";

/** Steps during which an operator is held: of a station the removal, of a packing table its work, and the ways there. */
export function isByHand(
  { process, step }: { readonly process: string; readonly step: string },
  scenario: Scenario,
): boolean {
  const station = scenario.stations.find(({ name }) => name === process);
  const server = takeawayGroups(scenario).find(({ places }) => places.includes(process))?.server;
  const work = station?.remove.by === "operator" ? "remove" : server?.by === "operator" ? server.name : undefined;
  return work !== undefined && [work, `call for ${work}`, walkTo(work)].includes(step);
}

/** Stations and places that may call for an operator in every cycle, so that people may be short. */
export function callers(scenario: Scenario): number {
  const packing = takeawayGroups(scenario).filter(({ server }) => server.by === "operator");
  const places = packing.reduce((sum, group) => sum + group.places.length, 0);
  return scenario.stations.filter(({ remove }) => remove.by === "operator").length + places;
}
