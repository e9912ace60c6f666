// Lets a screw that never stops stand while every station is stopped, once that has lasted for some time.
import type { GiveSpec, PlaceSpec, ProcessSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { fixed } from "#cell/words/tableWords.ts";

/** A token for every station that is stopped, and one for each that goes on, until it has been seen to. */
const STOPPED = "stations stopped";
const GOES_ON = "a station goes on";

/** Seconds; undefined where the screw turns on whatever happens, or one station never stops. */
function patience({ delivery, stations, stops = [] }: Scenario): number | undefined {
  if (delivery.kind !== "continuous") return undefined;
  const canAllStop = stations.every(({ name }) => stops.some(({ resource }) => resource === name));
  return canAllStop ? delivery.stopsScrewAfter : undefined;
}

export const mayScrewRest = (scenario: Scenario): boolean => patience(scenario) !== undefined;

const isTold = (scenario: Scenario, { resource }: StopSpec): boolean =>
  mayScrewRest(scenario) && scenario.stations.some(({ name }) => name === resource);

/** What a stop tells as it begins, and as it ends. */
export function stopTold(scenario: Scenario, stop: StopSpec): readonly GiveSpec[] {
  return isTold(scenario, stop) ? [{ place: STOPPED }] : [];
}

export function endTold(scenario: Scenario, stop: StopSpec): readonly GiveSpec[] {
  return isTold(scenario, stop) ? [{ place: GOES_ON }] : [];
}

/** The last step of a stop: it no longer counts, but only after the screw has heard of its end. */
export function countedOut(scenario: Scenario, stop: StopSpec): readonly StepSpec[] {
  if (!isTold(scenario, stop)) return [];
  return [{ name: "goes on", needs: [{ place: GOES_ON }, { place: STOPPED }], priority: 1 }];
}

/** In this order: whoever goes on is no longer counted when it is asked whether every station is stopped. */
export function restPlaces(scenario: Scenario): readonly PlaceSpec[] {
  if (!mayScrewRest(scenario)) return [];
  return [
    { name: GOES_ON, tokens: 0, rule: "priority" },
    { name: STOPPED, tokens: 0 },
  ];
}

/** Two stops that follow each other in one instant are two: for each the time is counted anew. */
export function restProcesses(scenario: Scenario): readonly ProcessSpec[] {
  const time = patience(scenario);
  if (time === undefined) return [];
  const all = { place: STOPPED, count: scenario.stations.length };
  const heard: Pick<StepSpec, "needs" | "priority" | "gives" | "next"> = {
    needs: [{ place: GOES_ON }],
    priority: 0,
    gives: [{ place: GOES_ON }],
    next: "until every station is stopped",
  };
  return [
    {
      name: "rest of the screw",
      resource: PLASTICATOR,
      steps: [
        { name: "until every station is stopped", needs: [all], gives: [all] },
        {
          name: "every station is stopped",
          ...heard,
          patience: { time: fixed({ kind: "fixed", value: time }), leaveFor: "stop the screw" },
        },
        { name: "stop the screw", stops: { resource: PLASTICATOR, rule: "hold" } },
        { name: "until a station goes on", ...heard, releases: PLASTICATOR },
      ],
    },
  ];
}
