// The mask beside a mold: a pin carries each shot's parts to it, so that the removal is off the mold's circuit; it has one place.
import type { PlaceSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { CellProcess, CellResource, CellStep } from "#cell/words/cellTable.ts";
import { maskOf, partsOf } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named } from "#cell/words/stepNames.ts";
import { ownStepsAfter } from "./ownStepsAfter.ts";
import { fixed, ownState, rank, waiting, working } from "#cell/words/tableWords.ts";

export const hasMasks = ({ delivery }: Scenario): boolean =>
  delivery.kind === "continuous" && delivery.removal === "pin";

const freePlace = ({ name }: StationSpec): string => `free ${maskOf(name)}`;
const partsPlace = ({ name }: StationSpec): string => `parts on the ${maskOf(name)}`;

/** In place of the removal: the mold is clear once the mask before it is. The parts count here, where they leave the mold and are judged. */
export function handToMask(scenario: Scenario, station: StationSpec): CellStep | undefined {
  if (!hasMasks(scenario)) return undefined;
  const needs = [{ place: freePlace(station), meanwhile: stateNames.awaitingTakeaway }];
  const counts = { [partsOf(station.name)]: station.cavities };
  return { ...named("mold.handToMask"), needs, gives: [{ place: partsPlace(station) }], counts };
}

export function maskResources(scenario: Scenario): readonly CellResource[] {
  if (!hasMasks(scenario)) return [];
  return scenario.stations.map(({ name, extra }) => ({
    name: maskOf(name),
    kind: "mask",
    station: name,
    states: [
      waiting(stateNames.starved),
      working(stateNames.working),
      ...ownStepsAfter(extra, ["mold.remove"]).map(ownState),
    ],
  }));
}

export function maskPlaces(scenario: Scenario): readonly PlaceSpec[] {
  if (!hasMasks(scenario)) return [];
  return scenario.stations.flatMap((station) => [
    { name: freePlace(station), tokens: 1, rank: rank.station },
    { name: partsPlace(station), tokens: 0, rank: rank.station },
  ]);
}

export function maskProcesses(scenario: Scenario): readonly CellProcess[] {
  if (!hasMasks(scenario)) return [];
  return scenario.stations.map((station) => ({
    name: maskOf(station.name),
    kind: "mask",
    station: station.name,
    resource: maskOf(station.name),
    steps: maskSteps(station),
  }));
}

/** What follows the removal is done on the mask as well. */
function maskSteps(station: StationSpec): readonly CellStep[] {
  const resource = maskOf(station.name);
  const own = ownStepsAfter(station.extra, ["mold.remove"]);
  const gives = [{ place: freePlace(station) }];
  return [
    {
      ...named("mold.remove"),
      needs: [{ place: partsPlace(station), meanwhile: stateNames.starved }],
      shows: [{ resource, state: stateNames.working }],
      time: fixed(station.remove.time),
      ...(own.length === 0 ? { gives } : {}),
    },
    ...own.map(({ name, time }, i): CellStep => ({
      role: "mold.own",
      name,
      shows: [{ resource, state: name }],
      time: fixed(time),
      ...(i === own.length - 1 ? { gives } : {}),
    })),
  ];
}
