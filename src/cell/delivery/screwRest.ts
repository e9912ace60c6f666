// Stops a continuous screw while every station is stopped, once that has lasted for some time.
import type { GiveSpec, PlaceSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import type { CellProcess, CellStep } from "#cell/words/cellTable.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { named, stepNames } from "#cell/words/stepNames.ts";
import { fixed } from "#cell/words/tableWords.ts";

/** A token for every station that is stopped, and one for each that goes on, until the screw knows of it. */
const STOPPED = "stations stopped";
const GOES_ON = "a station goes on";

/** Seconds; undefined where stops of stations do not stop the screw, or where one station has no stops. */
function patience({ delivery, stations, stops = [] }: Scenario): number | undefined {
  if (delivery.kind !== "continuous") return undefined;
  const canAllStop = stations.every(({ name }) => stops.some(({ resource }) => resource === name));
  return canAllStop ? delivery.stopsScrewAfter : undefined;
}

export const mayScrewRest = (scenario: Scenario): boolean => patience(scenario) !== undefined;

const isCounted = (scenario: Scenario, { resource }: StopSpec): boolean =>
  mayScrewRest(scenario) && scenario.stations.some(({ name }) => name === resource);

/** Tokens that a stop gives as it begins, and as it ends. */
export function beginCounted(scenario: Scenario, stop: StopSpec): readonly GiveSpec[] {
  return isCounted(scenario, stop) ? [{ place: STOPPED }] : [];
}

export function endCounted(scenario: Scenario, stop: StopSpec): readonly GiveSpec[] {
  return isCounted(scenario, stop) ? [{ place: GOES_ON }] : [];
}

/** The last step of a stop: it is no longer counted, but only after the screw has taken notice of its end. */
export function countedOut(scenario: Scenario, stop: StopSpec): readonly CellStep[] {
  if (!isCounted(scenario, stop)) return [];
  return [{ ...named("stop.counted"), needs: [{ place: GOES_ON }, { place: STOPPED }], priority: 1 }];
}

/** In this order: a station that goes on is no longer counted when the stopped ones are. */
export function restPlaces(scenario: Scenario): readonly PlaceSpec[] {
  if (!mayScrewRest(scenario)) return [];
  return [
    { name: GOES_ON, tokens: 0, rule: "priority" },
    { name: STOPPED, tokens: 0 },
  ];
}

/** Two stops that follow each other in one instant are two: for each the time is counted anew. */
export function restProcesses(scenario: Scenario): readonly CellProcess[] {
  const time = patience(scenario);
  if (time === undefined) return [];
  const all = { place: STOPPED, count: scenario.stations.length };
  const onGoingOn: Pick<CellStep, "needs" | "priority" | "gives" | "next"> = {
    needs: [{ place: GOES_ON }],
    priority: 0,
    gives: [{ place: GOES_ON }],
    next: stepNames["rest.awaitStops"],
  };
  return [
    {
      name: "rest of the screw",
      kind: "stop",
      resource: PLASTICATOR,
      steps: [
        { ...named("rest.awaitStops"), needs: [all], gives: [all] },
        {
          ...named("rest.allStopped"),
          ...onGoingOn,
          patience: { time: fixed({ kind: "fixed", value: time }), leaveFor: stepNames["rest.begin"] },
        },
        { ...named("rest.begin"), stops: { resource: PLASTICATOR, rule: "hold" } },
        { ...named("rest.awaitStation"), ...onGoingOn, releases: PLASTICATOR },
      ],
    },
  ];
}
