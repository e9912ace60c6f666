// The cycle table of a cell: what melt delivery, stations and operators do, put together as one piece of data.
import type { StepTable } from "#engine/stepTable.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { operatorNames } from "./cycleNames.ts";
import type { DeliverMelt } from "./meltDelivery.ts";
import { reciprocatingScrew } from "./reciprocatingScrew.ts";
import { stationCycle, stationResource } from "./stationCycle.ts";
import { rank, waiting, working } from "./tableWords.ts";

/** The order of processes is the order of ties: melt delivery, then the stations. */
export function cycleTable(scenario: Scenario): StepTable {
  const deliver: DeliverMelt = reciprocatingScrew;
  const delivery = deliver(scenario);
  return {
    resources: [
      ...delivery.resources,
      ...scenario.stations.map((station) => stationResource(station, delivery)),
      ...operatorNames(scenario.operators).map((name) => ({ name, states: [waiting("free"), working("removing")] })),
    ],
    places: [
      // Places are served in this order: a removal that takes no time makes its station ready within the instant.
      { name: "operators", tokens: scenario.operators, cargo: "numbered", rank: rank.crew },
      ...delivery.places,
    ],
    processes: [...delivery.processes, ...scenario.stations.map((station, k) => stationCycle(delivery, station, k))],
  };
}
