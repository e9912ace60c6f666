// The age of a part since it left its mold, where a server asks for it: too young it waits, too old it is a reject.
import type { GiveSpec, NeedSpec, PlaceSpec, ProcessSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import { refusedOf } from "#cell/words/cycleNames.ts";
import { fixed, rank } from "#cell/words/tableWords.ts";
import { tooOldFor } from "#cell/words/takeawayWords.ts";
import { type ServerGroup } from "#scenario/resolving/takeawayGroups.ts";

export const AGING = "aging before ";
const AGE = "age";
const TOO_OLD = "too old";

/** What lies before a server, and the room for it. */
export const partsBefore = ({ name }: ServerGroup): string => `parts before ${name}`;
export const roomBefore = ({ name }: ServerGroup): string => `room before ${name}`;

const agingPlace = ({ name }: ServerGroup): string => `${AGING}${name}`;
const ripePlace = ({ name }: ServerGroup): string => `old enough for ${name}`;
const takenPlace = ({ name }: ServerGroup): string => `taken by ${name}`;

const asksAge = ({ server }: ServerGroup): boolean => server.minAge !== undefined || server.maxAge !== undefined;

/** What all clocks like this one are called together; undefined for other processes. */
export function agingFor(process: string): string | undefined {
  const server = /^age [0-9]+ before (.+)$/u.exec(process)?.[1];
  return server === undefined ? undefined : `${AGING}${server}`;
}

/** Parts come in the order in which they left their molds, so that the n-th to be old enough is the n-th to come. */
export function agingPlaces(group: ServerGroup): readonly PlaceSpec[] {
  if (!asksAge(group)) return [];
  const taken = group.server.maxAge === undefined ? [] : [takenPlace(group)];
  return [agingPlace(group), ripePlace(group), ...taken].map((name) => ({ name, tokens: 0, rank: rank.station }));
}

/** What a part sets going when it leaves the mold of this station. */
export function agingStarts(groups: readonly ServerGroup[], station: string): readonly GiveSpec[] {
  const met = groups.filter((group) => group.station === null || group.station === station);
  return met.filter(asksAge).map((group) => ({ place: agingPlace(group) }));
}

export function ripeNeeds(group: ServerGroup): readonly NeedSpec[] {
  return asksAge(group) ? [{ place: ripePlace(group), meanwhile: "starved" }] : [];
}

export function takenGives(group: ServerGroup): readonly GiveSpec[] {
  return group.server.maxAge === undefined ? [] : [{ place: takenPlace(group) }];
}

/** A clock for every part that may be on its way: as many as there is room for, up to this server. */
export function agingProcesses(group: ServerGroup, groups: readonly ServerGroup[]): readonly ProcessSpec[] {
  if (!asksAge(group)) return [];
  const met = groups.slice(0, groups.indexOf(group) + 1);
  const way = met.filter((each) => each.station === null || each.station === group.station);
  const room = way.reduce((sum, { server }) => sum + server.buffer + server.places, 0);
  return Array.from({ length: room }, (_, i) => ({
    name: `${AGE} ${i + 1} before ${group.name}`,
    resource: group.places[0]!,
    priority: 0,
    steps: agingSteps(group),
  }));
}

/** A microsecond: what is exactly at the limit is not beyond it. */
const beyond = 1e-6;

function agingSteps(group: ServerGroup): readonly StepSpec[] {
  const { name, minAge = 0, maxAge } = group.server;
  const age: StepSpec = {
    name: AGE,
    needs: [{ place: agingPlace(group) }],
    ...(minAge > 0 ? { time: { ...fixed({ kind: "fixed", value: minAge }), resource: partsBefore(group) } } : {}),
    gives: [{ place: ripePlace(group) }],
    stoppedBy: [],
  };
  if (maxAge === undefined) return [age];
  return [
    age,
    {
      name: "until it is taken",
      needs: [{ place: takenPlace(group) }],
      patience: { time: fixed({ kind: "fixed", value: maxAge - minAge + beyond }), leaveFor: TOO_OLD },
      stoppedBy: [],
      next: AGE,
    },
    {
      name: TOO_OLD,
      needs: [{ place: partsBefore(group) }, { place: ripePlace(group) }],
      counts: { [refusedOf(tooOldFor(name))]: 1 },
      gives: [{ place: roomBefore(group) }],
      stoppedBy: [],
    },
  ];
}
