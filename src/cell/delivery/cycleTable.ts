// The cycle table of a cell: what melt delivery, stations and operators do, put together as one piece of data.
import type { Scenario } from "#scenario/scenario.ts";
import type { CellTable } from "#cell/words/cellTable.ts";
import { accumulatorHead } from "./accumulatorHead.ts";
import { commonAccumulator } from "./commonAccumulator.ts";
import { continuousExtrusion } from "./continuousExtrusion.ts";
import { operatorResources, operatorsPlace } from "#cell/table/crew.ts";
import { maskPlaces, maskProcesses, maskResources } from "#cell/table/mask.ts";
import type { DeliverMelt } from "#cell/table/meltDelivery.ts";
import { reciprocatingScrew } from "./reciprocatingScrew.ts";
import { stationCycle, stationResource } from "#cell/table/stationCycle.ts";

function deliveryOf({ delivery }: Scenario): DeliverMelt {
  switch (delivery.kind) {
    case "reciprocating-screw":
      return reciprocatingScrew;
    case "accumulator-head":
      return delivery.accumulator === "common" ? commonAccumulator : accumulatorHead;
    case "continuous":
      return continuousExtrusion;
  }
}

/** The order of processes is the order of ties: melt delivery, then the stations. */
export function cycleTable(scenario: Scenario): CellTable {
  const delivery = deliveryOf(scenario)(scenario);
  return {
    resources: [
      ...delivery.resources,
      ...scenario.stations.map((station) => stationResource(scenario, station, delivery)),
      ...maskResources(scenario),
      ...operatorResources(scenario),
    ],
    places: [
      // Places are served in this order: a removal that takes no time makes its station ready within the instant.
      operatorsPlace(scenario),
      ...delivery.places,
      ...maskPlaces(scenario),
    ],
    processes: [
      ...delivery.processes,
      ...scenario.stations.map((_, k) => stationCycle(delivery, scenario, k)),
      ...maskProcesses(scenario),
    ],
  };
}
