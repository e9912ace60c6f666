// Adds to a cycle table when the wall of each shot touches the mold and when the mold begins to open, and rejects under-cooled shots.
import type { PlaceSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { lastWith, type CellProcess, type CellStep, type CellTable } from "#cell/words/cellTable.ts";
import { contactsOf, opensOf } from "#cell/words/cycleNames.ts";
import { named, stepNames } from "#cell/words/stepNames.ts";
import { fixed } from "#cell/words/tableWords.ts";
import { stationCooling } from "./stationCooling.ts";
import type { ShotCooling } from "#physics/window/shotCooling.ts";

const contactPlace = (station: string): string => `contact ${station}`;
const unlockedPlace = (station: string): string => `unlocked ${station}`;
export const underCooledPlace = (station: string): string => `under-cooled ${station}`;

/** Returns the same table where the cooling of no station is known. */
export function withContact(table: CellTable, scenario: Scenario): CellTable {
  const limit = scenario.quality?.maxDemold;
  const followed = scenario.stations.flatMap((station) => {
    const cooling = stationCooling(scenario, station);
    return cooling ? [{ station, cooling }] : [];
  });
  const judged = limit === undefined ? [] : followed;
  return {
    ...table,
    places: [...table.places, ...judged.flatMap(({ station }) => clockPlaces(station))],
    processes: [
      ...table.processes.map((process) => {
        const own = followed.find(({ station }) => process.kind === "station" && process.station === station.name);
        return own
          ? touchingStation(process, own.station, {
              cooling: own.cooling,
              isJudged: judged.includes(own),
            })
          : process;
      }),
      ...judged.map(({ station, cooling }) => contactClock(station, cooling, limit!)),
    ],
  };
}

interface Following {
  readonly cooling: ShotCooling;
  readonly isJudged: boolean;
}

function touchingStation(process: CellProcess, { name }: StationSpec, { cooling, isJudged }: Following): CellProcess {
  const { steps } = process;
  const [blow, open] = [lastWith(steps, "mold.blow"), lastWith(steps, "mold.open")];
  const marking = (step: CellStep, counter: string, place: string): CellStep => ({
    ...step,
    counts: { [counter]: 1 },
    ...(isJudged ? { gives: [{ place }] } : {}),
  });
  // A step of its own, because other processes get the tokens of a close even when a stop breaks it off.
  const touch = marking({ ...named("mold.touch"), stoppedBy: [] }, contactsOf(name), contactPlace(name));
  // With needs, even none, a step that takes no time waits for the end of a stop.
  const unlock = marking({ ...named("mold.unlock"), needs: [] }, opensOf(name), unlockedPlace(name));
  const [before, after] = cooling.inflation === null ? [[], [touch]] : [[touch], []];
  const first = before[0]?.name ?? stepNames["mold.blow"];
  const forget = isJudged ? [forgetContact(name, first)] : [];
  const [untilBlow, blown, rest] = [steps.slice(0, blow), steps.slice(blow, blow + 1), steps.slice(blow + 1, open)];
  return {
    ...process,
    steps: [...untilBlow, ...forget, ...before, ...blown, ...after, ...rest, unlock, ...steps.slice(open)],
  };
}

/** Takes what a shot left that was lost or rejected for another reason. The station alone takes it, so it never waits in line. */
function forgetContact(station: string, first: string): CellStep {
  const needs = [{ place: underCooledPlace(station) }];
  return { ...named("judge.forgetContact"), needs, ...leaving(0, first) };
}

/** Leaves for another step when what it needs has not come after some seconds; no stop holds it. */
function leaving(seconds: number, leaveFor: string): Pick<CellStep, "patience" | "stoppedBy"> {
  return { patience: { time: fixed({ kind: "fixed", value: seconds }), leaveFor }, stoppedBy: [] };
}

function clockPlaces({ name }: StationSpec): readonly PlaceSpec[] {
  return [contactPlace, unlockedPlace, underCooledPlace].map((place) => ({ name: place(name), tokens: 0 }));
}

/** Runs from the first contact to the opening mold. An opening that a lost shot left is taken away before the next one. */
function contactClock({ name }: StationSpec, { inflation, timeTo }: ShotCooling, limit: number): CellProcess {
  const needs = [{ place: unlockedPlace(name) }];
  const least = (inflation ?? 0) + timeTo(limit);
  const next = stepNames["contactClock.await"];
  return {
    name: `contact clock ${name}`,
    kind: "contact clock",
    resource: name,
    steps: [
      { ...named("contactClock.await"), needs: [{ place: contactPlace(name) }], stoppedBy: [] },
      { ...named("contactClock.forgetOpening"), needs, ...leaving(0, stepNames["contactClock.contact"]) },
      { ...named("contactClock.contact"), needs, ...leaving(least, stepNames["contactClock.cooled"]) },
      { ...named("contactClock.underCooled"), gives: [{ place: underCooledPlace(name) }], next },
      { ...named("contactClock.cooled"), needs, stoppedBy: [], next },
    ],
  };
}
