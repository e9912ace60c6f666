// The selector valve between one delivering resource and all stations: its states, the shift to a port and the drop through it.
import type { StateSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { CellResource, CellStep } from "#cell/words/cellTable.ts";
import { shotsOf, VALVE } from "#cell/words/cycleNames.ts";
import { FREE_VALVE, FULL_SHOT, VALVE_TO_SHIFT_BACK } from "#cell/words/placeNames.ts";
import { openTo, stateNames } from "#cell/words/stateNames.ts";
import { named } from "#cell/words/stepNames.ts";
import { shotTime } from "./shotTime.ts";
import { fixed, waiting, working } from "#cell/words/tableWords.ts";

export function valveResource({ stations }: Scenario): CellResource {
  const open = stations.map(({ name }) => working(openTo(name)));
  return {
    name: VALVE,
    kind: "valve",
    states: [waiting(stateNames.neutral), working(stateNames.shifting), ...open],
  };
}

/** From ready to the end of the drop; a run begins in the first of them. */
export function stationStates(): readonly StateSpec[] {
  const { awaitingMelt, awaitingTurn, awaitingValve, valveShiftingToStation, parisonDrop } = stateNames;
  return [
    ...[awaitingMelt, awaitingTurn, awaitingValve].map(waiting),
    ...[valveShiftingToStation, parisonDrop].map(working),
  ];
}

/** `pusher` is what delivers through the valve: the screw itself, or the ram of an accumulator. */
export function shiftToPort(scenario: Scenario, station: StationSpec, pusher: string): CellStep {
  return {
    ...named("valve.toPort"),
    needs: [
      { place: FULL_SHOT, meanwhile: stateNames.awaitingMelt, whileOthersTurn: stateNames.awaitingTurn },
      { place: FREE_VALVE, meanwhile: stateNames.awaitingValve },
    ],
    shows: [
      { resource: station.name, state: stateNames.valveShiftingToStation },
      { resource: VALVE, state: stateNames.shifting },
      { resource: pusher, state: stateNames.valveShifting },
    ],
    time: { ...fixed(scenario.valve.shift), resource: VALVE },
  };
}

export function drop(station: StationSpec, pusher: string): CellStep {
  return {
    ...named("mold.drop"),
    shows: [
      { resource: station.name, state: stateNames.parisonDrop },
      { resource: VALVE, state: openTo(station.name) },
      { resource: pusher, state: stateNames.delivering },
    ],
    time: { distributions: [shotTime(station.drop, station)] },
    gives: [{ place: VALVE_TO_SHIFT_BACK }],
    counts: { [shotsOf(station.name)]: 1 },
  };
}
