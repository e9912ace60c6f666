// Limits of a part's age at a server: a part that is too young waits, a part that is too old is a reject.
import type { GiveSpec, NeedSpec, PlaceSpec } from "#engine/compiler/stepTable.ts";
import type { CellProcess, CellStep } from "#cell/words/cellTable.ts";
import { refusedOf } from "#cell/words/cycleNames.ts";
import { partsBefore, roomBefore } from "#cell/words/placeNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named, stepNames } from "#cell/words/stepNames.ts";
import { fixed, rank } from "#cell/words/tableWords.ts";
import { tooOldFor } from "#cell/words/takeawayWords.ts";
import { type ServerGroup } from "#scenario/resolving/takeawayGroups.ts";

const agingPlace = ({ name }: ServerGroup): string => `aging before ${name}`;
const ripePlace = ({ name }: ServerGroup): string => `old enough for ${name}`;
const takenPlace = ({ name }: ServerGroup): string => `taken by ${name}`;

const asksAge = ({ server }: ServerGroup): boolean => server.minAge !== undefined || server.maxAge !== undefined;

/** Parts arrive in the order in which they left their molds. The n-th part to be old enough is therefore the n-th to arrive. */
export function agingPlaces(group: ServerGroup): readonly PlaceSpec[] {
  if (!asksAge(group)) return [];
  const taken = group.server.maxAge === undefined ? [] : [takenPlace(group)];
  return [agingPlace(group), ripePlace(group), ...taken].map((name) => ({ name, tokens: 0, rank: rank.station }));
}

/** The age clocks that a part starts when it leaves the mold of this station. */
export function agingStarts(groups: readonly ServerGroup[], station: string): readonly GiveSpec[] {
  const met = groups.filter((group) => group.station === null || group.station === station);
  return met.filter(asksAge).map((group) => ({ place: agingPlace(group) }));
}

export function ripeNeeds(group: ServerGroup): readonly NeedSpec[] {
  return asksAge(group) ? [{ place: ripePlace(group), meanwhile: stateNames.starved }] : [];
}

export function takenGives(group: ServerGroup): readonly GiveSpec[] {
  return group.server.maxAge === undefined ? [] : [{ place: takenPlace(group) }];
}

/** One clock for each part between mold and server. Their number is the room up to and including this server. */
export function agingProcesses(group: ServerGroup, groups: readonly ServerGroup[]): readonly CellProcess[] {
  if (!asksAge(group)) return [];
  const met = groups.slice(0, groups.indexOf(group) + 1);
  const way = met.filter((each) => each.station === null || each.station === group.station);
  const room = way.reduce((sum, { server }) => sum + server.buffer + server.places, 0);
  return Array.from({ length: room }, (_, i) => ({
    name: `age ${i + 1} before ${group.name}`,
    kind: "age clock",
    group: agingPlace(group),
    resource: group.places[0]!,
    priority: 0,
    steps: agingSteps(group),
  }));
}

/** 1 µs: a part exactly at the limit is still accepted. */
const beyond = 1e-6;

function agingSteps(group: ServerGroup): readonly CellStep[] {
  const { name, minAge = 0, maxAge } = group.server;
  const ripening = { ...fixed({ kind: "fixed", value: minAge }), resource: partsBefore(group.name) };
  const age: CellStep = {
    ...named("age.ripen"),
    needs: [{ place: agingPlace(group) }],
    ...(minAge > 0 ? { time: ripening } : {}),
    gives: [{ place: ripePlace(group) }],
    stoppedBy: [],
  };
  if (maxAge === undefined) return [age];
  return [
    age,
    {
      ...named("age.awaitTaken"),
      needs: [{ place: takenPlace(group) }],
      patience: {
        time: fixed({ kind: "fixed", value: maxAge - minAge + beyond }),
        leaveFor: stepNames["age.tooOld"],
      },
      stoppedBy: [],
      next: stepNames["age.ripen"],
    },
    {
      ...named("age.tooOld"),
      needs: [{ place: partsBefore(group.name) }, { place: ripePlace(group) }],
      counts: { [refusedOf(tooOldFor(name))]: 1 },
      gives: [{ place: roomBefore(group.name) }],
      stoppedBy: [],
    },
  ];
}
