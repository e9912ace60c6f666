// The selector valve between one delivering resource and all stations: its states, the shift to a port and the drop through it.
import type { ResourceSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { shotsOf, VALVE } from "#cell/words/cycleNames.ts";
import { shotLaw } from "./shotLaw.ts";
import { fixed, waiting, working } from "#cell/words/tableWords.ts";

export function valveResource({ stations }: Scenario): ResourceSpec {
  return {
    name: VALVE,
    states: [waiting("neutral"), working("shifting"), ...stations.map((station) => working(`open to ${station.name}`))],
  };
}

/** `pusher` is what delivers through the valve: the screw itself, or the ram of an accumulator. */
export function shiftToPort(scenario: Scenario, station: StationSpec, pusher: string): StepSpec {
  return {
    name: "shift to port",
    needs: [
      { place: "full shot", meanwhile: "awaiting melt", whileOthersTurn: "awaiting turn" },
      { place: "valve", meanwhile: "awaiting valve" },
    ],
    shows: [
      { resource: station.name, state: "valve shifting to it" },
      { resource: VALVE, state: "shifting" },
      { resource: pusher, state: "valve shifting" },
    ],
    time: { ...fixed(scenario.valve.shift), resource: VALVE },
  };
}

export function drop(station: StationSpec, pusher: string): StepSpec {
  return {
    name: "drop",
    shows: [
      { resource: station.name, state: "parison drop" },
      { resource: VALVE, state: `open to ${station.name}` },
      { resource: pusher, state: "delivering" },
    ],
    time: { laws: [shotLaw(station.drop, station)] },
    gives: [{ place: "valve to be shifted back" }],
    counts: { [shotsOf(station.name)]: 1 },
  };
}
