// Counts that only rise, as the seconds of each rise.
import type { EventRecord } from "#cell/records/eventRecord.ts";
import type { RecordedRun } from "#cell/records/recordedRun.ts";
import { goodCounter, partsOf, refusedOf, rejectsOf, shotsOf } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { tooOldFor } from "#cell/words/takeawayWords.ts";
import { rejectReasons } from "#cell/layers/withQuality.ts";
import { nextGroup, takeawayGroups, type ServerGroup } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Seconds of each rise, ascending, and what it adds. */
export interface Rises {
  readonly amount: number;
  readonly seconds: Float64Array;
  /** What had been counted before the first of them. */
  readonly before: number;
}

export function countAt({ amount, seconds, before }: Rises, time: number): number {
  let [first, beyond] = [0, seconds.length];
  while (first < beyond) {
    const middle = (first + beyond) >> 1;
    if (seconds[middle]! <= time) first = middle + 1;
    else beyond = middle;
  }
  return before + amount * first;
}

export interface StationCounts {
  readonly shots: Rises;
  readonly parts: Rises;
  readonly rejects: readonly Rises[];
}

/** Parts that came to a server, that its places took, that were too old before it, and that passed it. */
export interface ServerCounts {
  readonly come: Rises;
  readonly taken: Rises;
  readonly tooOld: Rises;
  readonly passed: Rises;
}

/** Within a stretch: what rose before it is one number. */
export interface Within {
  readonly from: number;
  readonly until: number;
}

function rises(
  { amount, seconds }: { readonly amount: number; readonly seconds: readonly number[] },
  { from, until }: Within,
  keepsBefore = false,
): Rises {
  const inside = seconds.filter((each) => each > from && each <= until);
  const before = keepsBefore ? amount * seconds.filter((each) => each <= from).length : 0;
  return { amount, seconds: Float64Array.from(inside), before };
}

const none = { amount: 1, seconds: [] };

export function stationCounts(run: RecordedRun, name: string, within: Within): StationCounts {
  const of = (counter: string): Rises => rises(run.rises.get(counter) ?? none, within);
  return {
    shots: of(shotsOf(name)),
    parts: of(partsOf(name)),
    rejects: rejectReasons.map((reason) => of(rejectsOf(name, reason))).filter(({ seconds }) => seconds.length > 0),
  };
}

export const goodCounts = (run: RecordedRun, within: Within): Rises =>
  rises(run.rises.get(goodCounter) ?? none, within);

/** Follows parts from server to server. */
export class ServerWatch {
  readonly groups: readonly ServerGroup[];
  readonly #come = new Map<string, number[]>();
  readonly #taken = new Map<string, number[]>();
  readonly #passed = new Map<string, number[]>();
  readonly #groupOf: ReadonlyMap<string, ServerGroup>;
  readonly #holding = new Set<string>();

  constructor(scenario: Scenario) {
    this.groups = takeawayGroups(scenario);
    this.#groupOf = new Map(this.groups.flatMap((group) => group.places.map((place) => [place, group])));
    for (const { name } of this.groups) for (const each of [this.#come, this.#taken, this.#passed]) each.set(name, []);
  }

  take(event: EventRecord): void {
    if (this.groups.length === 0) return;
    const { resource, role, state, seconds, parts, station } = event;
    const group = this.#groupOf.get(resource);
    if (!group) {
      const first = role === "part.handOver" && parts > 0 ? nextGroup(this.groups, station) : undefined;
      if (first) this.#come.get(first.name)!.push(seconds);
      return;
    }
    const leaves = role === "server.passOn" || role === "server.refuse";
    if (leaves && state !== stateNames.blocked) {
      this.#holding.delete(resource);
      if (role === "server.passOn") this.#pass(group, seconds);
    } else if (takes(event) && !this.#holding.has(resource)) {
      this.#holding.add(resource);
      this.#taken.get(group.name)!.push(seconds);
    }
  }

  #pass(group: ServerGroup, seconds: number): void {
    this.#passed.get(group.name)!.push(seconds);
    const next = nextGroup(this.groups, group.station, group);
    if (next) this.#come.get(next.name)!.push(seconds);
  }

  countsOf({ name }: ServerGroup, run: RecordedRun, within: Within): ServerCounts {
    const of = (known: ReadonlyMap<string, number[]>, keepsBefore = true): Rises =>
      rises({ amount: 1, seconds: known.get(name)! }, within, keepsBefore);
    const tooOld = rises(run.rises.get(refusedOf(tooOldFor(name))) ?? none, within, true);
    return { come: of(this.#come), taken: of(this.#taken), tooOld, passed: of(this.#passed, false) };
  }
}

/** It has taken a part, be it that it still waits for an operator. */
function takes({ role, state, kind }: EventRecord): boolean {
  const isAtWork = role === "server.work" || role === "server.take" || role === "crew.call" || role === "crew.walk";
  return isAtWork && state !== stateNames.starved && kind !== "off";
}
