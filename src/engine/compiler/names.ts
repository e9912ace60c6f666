// Numbers for all that a step table names: declared names are looked up, all others are numbered in the order of their first use.
import { invariant } from "#foundation/invariant.ts";
import type { StateSpec, StepTable, StopMark } from "./stepTable.ts";

/** A timed step of one process, as records and shares name it; after the steps come the stops of each resource. */
export interface Activity {
  readonly resource: string;
  readonly step: string;
  readonly process: string;
  /** The resource to which its time on the binding chain belongs; the first of a family stands for all. */
  readonly owner: string;
}

export class Names {
  readonly activities: Activity[] = [];
  readonly counters: string[] = [];
  /** By counter: what its rise says of a stop. */
  readonly stopMarks = new Map<number, StopMark>();
  readonly streams: { readonly resource: string; readonly step: string }[] = [];
  readonly states: readonly { readonly resource: number; readonly name: string; readonly kind: StateSpec["kind"] }[];
  readonly #resources: ReadonlyMap<string, number>;
  readonly #places: ReadonlyMap<string, number>;

  constructor({ resources, places, processes }: StepTable) {
    this.#resources = numbered(resources, "resource");
    this.#places = numbered(places, "place");
    numbered(processes, "process");
    this.states = resources.flatMap(({ states }, resource) =>
      states.map(({ name, kind }) => ({ resource, name, kind })),
    );
  }

  resource(name: string): number {
    return declared(this.#resources, name);
  }

  place(name: string): number {
    return declared(this.#places, name);
  }

  state(resource: string, state: string): number {
    const owner = this.resource(resource);
    const found = this.states.findIndex((each) => each.resource === owner && each.name === state);
    invariant(found !== -1, "a state shown is one of the resource's states", { resource, state });
    return found;
  }

  /** Steps of one process that have one name, as every night of a calendar, are one activity. */
  activity(activity: Activity): number {
    const { resource, step, process, owner } = activity;
    const isSame = (each: Activity): boolean =>
      each.step === step && each.process === process && each.resource === resource && each.owner === owner;
    return numberOf(this.activities, isSame, activity);
  }

  counter(name: string): number {
    return numberOf(this.counters, (each) => each === name, name);
  }

  stopCounter(mark: StopMark): number {
    const counter = this.counter(`${mark.phase} of stop ${mark.stop}`);
    this.stopMarks.set(counter, mark);
    return counter;
  }

  /** Streams are shared by name: two steps that name the same one draw from it in turn. */
  stream(resource: string, step: string): number {
    return numberOf(this.streams, (each) => each.step === step && each.resource === resource, { resource, step });
  }
}

function numbered(items: readonly { readonly name: string }[], what: string): ReadonlyMap<string, number> {
  const numbers = new Map(items.map((item, i) => [item.name, i]));
  invariant(numbers.size === items.length, `no two of the same name: ${what}`, {
    names: items.map((item) => item.name),
  });
  return numbers;
}

function declared(numbers: ReadonlyMap<string, number>, name: string): number {
  const found = numbers.get(name);
  invariant(found !== undefined, "a name in a step table is declared", { name });
  return found;
}

function numberOf<Item>(items: Item[], isSame: (item: Item) => boolean, item: Item): number {
  const known = items.findIndex(isSame);
  return known === -1 ? items.push(item) - 1 : known;
}
