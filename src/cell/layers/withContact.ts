// Adds to a cycle table when the wall of each shot touches the mold and when the mold begins to open, and rejects under-cooled shots.
import type { GiveSpec, PlaceSpec } from "#engine/compiler/stepTable.ts";
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
  const blow = lastWith(process.steps, "mold.blow");
  const open = lastWith(process.steps, "mold.open");
  // A blow starts when the step before it ends, whatever stops.
  const begins = cooling.inflation === null ? blow : blow - 1;
  const marked = (step: CellStep, counter: string, place: string): CellStep => {
    const gives: readonly GiveSpec[] = isJudged ? [...(step.gives ?? []), { place }] : (step.gives ?? []);
    return {
      ...step,
      counts: { ...step.counts, [counter]: 1 },
      ...(gives.length > 0 ? { gives } : {}),
    };
  };
  const unlock = marked(named("mold.unlock"), opensOf(name), unlockedPlace(name));
  const steps = process.steps.map((step, i) =>
    i === begins ? marked(step, contactsOf(name), contactPlace(name)) : step,
  );
  return {
    ...process,
    steps: [...steps.slice(0, open), unlock, ...steps.slice(open)],
  };
}

function clockPlaces({ name }: StationSpec): readonly PlaceSpec[] {
  return [contactPlace, unlockedPlace, underCooledPlace].map((place) => ({
    name: place(name),
    tokens: 0,
  }));
}

/** Runs from the first contact to the opening mold. What a lost shot has left behind is taken away before the next one. */
function contactClock({ name }: StationSpec, { inflation, timeTo }: ShotCooling, limit: number): CellProcess {
  const unlocked = [{ place: unlockedPlace(name) }];
  const least = (inflation ?? 0) + timeTo(limit);
  const leaving = (seconds: number, leaveFor: string): Pick<CellStep, "patience" | "stoppedBy"> => ({
    patience: { time: fixed({ kind: "fixed", value: seconds }), leaveFor },
    stoppedBy: [],
  });
  const first = stepNames["contactClock.await"];
  return {
    name: `contact clock ${name}`,
    kind: "contact clock",
    resource: name,
    steps: [
      {
        ...named("contactClock.await"),
        needs: [{ place: contactPlace(name) }],
        stoppedBy: [],
      },
      {
        ...named("contactClock.forgetOpening"),
        needs: unlocked,
        ...leaving(0, stepNames["contactClock.forgetShot"]),
      },
      {
        ...named("contactClock.forgetShot"),
        needs: [{ place: underCooledPlace(name) }],
        ...leaving(0, stepNames["contactClock.contact"]),
      },
      {
        ...named("contactClock.contact"),
        needs: unlocked,
        ...leaving(least, stepNames["contactClock.cooled"]),
      },
      {
        ...named("contactClock.underCooled"),
        gives: [{ place: underCooledPlace(name) }],
        next: first,
      },
      {
        ...named("contactClock.cooled"),
        needs: unlocked,
        stoppedBy: [],
        next: first,
      },
    ],
  };
}
