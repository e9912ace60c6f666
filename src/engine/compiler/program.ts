// Turns a step table into numbers: one row a step, every name resolved and checked once, so that the loop meets no text.
import { invariant } from "#foundation/invariant.ts";
import { CARGO, HAND, HOLDS, NO_REGISTER, OWN_RANK, RUNS_ON } from "#core/border/numbers.ts";
import type { Draw, Give, Need, Row, Scale, Show } from "./row.ts";
import { lawTable, type LawTable, type StepLaws } from "#engine/distributions/lawTable.ts";
import { Sampler, TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { secludedPassages } from "./seclusion.ts";
import { stepCode, type StepCode } from "./stepCode.ts";
import type {
  GiveSpec,
  NeedSpec,
  PlaceSpec,
  ProcessSpec,
  Register,
  ScaleSpec,
  ServingRule,
  ShowSpec,
  StateKind,
  StepSpec,
  StepTable,
  StopMark,
  StopRule,
  TimeSpec,
} from "./stepTable.ts";
import { linesFor, processesWhere, takersOf } from "./takers.ts";

/** A timed step of one process, as records and shares name it; after the steps come the stops of each resource. */
export interface Activity {
  readonly resource: string;
  readonly step: string;
  readonly process: string;
}

export interface Program {
  readonly table: StepTable;
  readonly rows: readonly Row[];
  /** The same rows and their laws as numbers, for the loop of the simulation. */
  readonly steps: StepCode;
  readonly laws: LawTable;
  /** Kinds of draws that can be made ahead of their use: the law, and the stream that gives numbers to nothing else. */
  readonly drawnAhead: readonly { readonly law: number; readonly stream: number }[];
  /** First row of each process, and the row with which it begins. */
  readonly firstRow: Int32Array;
  readonly beginsAt: Int32Array;
  readonly activities: readonly Activity[];
  readonly counters: readonly string[];
  /** By counter: what its rise says of a stop. */
  readonly stopMarks: ReadonlyMap<number, StopMark>;
  readonly streams: readonly { readonly resource: string; readonly step: string }[];
  readonly states: readonly { readonly resource: number; readonly name: string; readonly kind: StateKind }[];
  readonly isWorking: Uint8Array;
  readonly firstState: Int32Array;
  /** State and activity of each resource while it is stopped; -1 where nothing stops it. */
  readonly stoppedState: Int32Array;
  readonly stoppedActivity: Int32Array;
  readonly ownResource: Int32Array;
  /** Of each resource the process that does its work, -1 where there is none. */
  readonly worker: Int32Array;
  /** Processes that take from each place, in their order. */
  readonly takers: readonly Int32Array[];
  /** Places at which processes stand in line for steps that also need this place. */
  readonly lines: readonly Int32Array[];
  /** Of each place: its rule's number, and the rank of its tokens among completions that are latest at once. */
  readonly servingRule: Uint8Array;
  readonly rank: Float64Array;
  /** Processes whose time passes only while the resource works. */
  readonly clocked: readonly Int32Array[];
}

/** In the order of their numbers in the core. */
const servingRules: readonly ServingRule[] = ["first-come", "longest-since-served", "priority", "rotation", "urgency"];
const stopRules: readonly StopRule[] = ["finish", "hold", "scrap"];

/** Throws BrokenInvariant where the table names what it does not hold. */
export function compileTable(table: StepTable): Program {
  return new Compiler(table).compile();
}

class Compiler {
  readonly #table: StepTable;
  readonly #activities: Activity[] = [];
  readonly #counters: string[] = [];
  readonly #stopMarks = new Map<number, StopMark>();
  readonly #laws: StepLaws[] = [];
  #lawCount = 0;
  readonly #streams: { resource: string; step: string }[] = [];
  /** Of each stream: the laws of all who draw from it, in words. */
  readonly #drawers: string[][] = [];
  readonly #states: { resource: number; name: string; kind: StateKind }[] = [];
  readonly #resource: ReadonlyMap<string, number>;
  readonly #place: ReadonlyMap<string, number>;
  readonly #stoppable: ReadonlySet<string>;
  readonly #firstRow: Int32Array;

  constructor(table: StepTable) {
    this.#table = table;
    this.#resource = numbered(table.resources, "resource");
    this.#place = numbered(table.places, "place");
    numbered(table.processes, "process");
    this.#stoppable = new Set(table.processes.flatMap((p) => p.steps.flatMap((s) => s.stops?.resource ?? [])));
    this.#firstRow = new Int32Array(table.processes.length);
    let row = 0;
    table.processes.forEach((process, i) => {
      this.#firstRow[i] = row;
      row += process.steps.length;
    });
    table.resources.forEach((resource, number) => {
      for (const state of resource.states) this.#states.push({ resource: number, name: state.name, kind: state.kind });
    });
  }

  compile(): Program {
    const { resources, places, processes } = this.#table;
    const steps = processes.flatMap((process, p) => process.steps.map((step, i) => this.#row(process, p, step, i)));
    const drawnAhead: { law: number; stream: number }[] = [];
    const resolved = steps.map((row) => ({ ...row, draw: row.draw && this.#withKind(row.draw, drawnAhead) }));
    const stopped = resources.map((resource) => (this.#stoppable.has(resource.name) ? resource.name : undefined));
    const stoppedActivity = resources.map(({ name, whenStopped = "" }) =>
      this.#stoppable.has(name) ? this.#activity(name, whenStopped, name) : -1,
    );
    const takers = places.map((_, place) => takersOf(resolved, place, this.#table));
    const rows = resolved.map((row) => {
      const takesAlone = row.needs.every((need) => this.#wantedByOne(need, takers));
      return { ...row, takesAlone, waitsUnseen: takesAlone && row.needs.every(isUnseen) };
    });
    const rank = Float64Array.from(places, (place: PlaceSpec) => place.rank ?? OWN_RANK + 1);
    invariant(rank.every(Number.isInteger), "ranks are whole numbers", { rank });
    return {
      table: this.#table,
      rows,
      steps: stepCode(rows, rank, secludedPassages(rows, this.#table)),
      laws: lawTable(this.#laws),
      drawnAhead,
      firstRow: this.#firstRow,
      beginsAt: Int32Array.from(
        processes,
        (process, p) => this.#firstRow[p]! + (process.begins ? stepNumber(process, process.begins) : 0),
      ),
      activities: this.#activities,
      counters: this.#counters,
      stopMarks: this.#stopMarks,
      streams: this.#streams,
      states: this.#states,
      isWorking: Uint8Array.from(this.#states, (state) => (state.kind === "working" ? 1 : 0)),
      firstState: Int32Array.from(resources, (_, r) => this.#states.findIndex((state) => state.resource === r)),
      stoppedState: Int32Array.from(resources, (r, i) =>
        stopped[i] === undefined ? -1 : this.#state(r.name, r.whenStopped ?? ""),
      ),
      stoppedActivity: Int32Array.from(stoppedActivity),
      ownResource: Int32Array.from(processes, (process) => this.#resourceNumber(process.resource)),
      worker: Int32Array.from(resources, ({ name }) =>
        processes.findIndex((each) => each.resource === name && !isStop(each)),
      ),
      takers,
      lines: places.map((_, place) => linesFor(rows, place, this.#table)),
      servingRule: Uint8Array.from(places, (place) => servingRules.indexOf(place.rule ?? "first-come")),
      rank,
      clocked: resources.map((_, r) => processesWhere(rows, (row) => row.draw?.clock === r)),
    };
  }

  #row(process: ProcessSpec, number: number, step: StepSpec, index: number): Row {
    const first = this.#firstRow[number]!;
    const to = (name: string): number => first + stepNumber(process, name);
    const isPhysics = step.stopped === "physics";
    const effects = typeof step.stopped === "object" ? step.stopped : {};
    const marks = (step.stopMarks ?? []).map((mark) => [this.#counterOf(mark), 1] as const);
    const counts = [...Object.entries(step.counts ?? {}), ...marks];
    const shows = (step.shows ?? []).map((show) => this.#show(show));
    const occupied = this.#occupied(process, step);
    const isGated = !isPhysics && (step.time !== undefined || step.needs !== undefined);
    return {
      name: step.name,
      process: number,
      needs: (step.needs ?? []).map((need) => this.#need(process, need)),
      takesAlone: false,
      waitsUnseen: false,
      priority: step.priority ?? process.priority ?? 0,
      patience: step.patience ? this.#draw(process, step.name, step.patience.time, true) : null,
      patienceActivity: step.patience ? this.#activity(process.resource, `${step.name} patience`, process.name) : -1,
      patienceNext: step.patience ? to(step.patience.leaveFor) : -1,
      shows,
      draw: step.time ? this.#draw(process, step.name, step.time) : null,
      activity: step.time ? this.#activity(step.time.resource ?? process.resource, step.name, process.name) : -1,
      isClock: step.isClock ?? false,
      scale: step.scale ? this.#scale(process, step.scale, to) : null,
      gives: (step.gives ?? []).map((give) => this.#give(give)),
      counters: Int32Array.from(counts, ([name]) => this.#counter(name)),
      amounts: Float64Array.from(counts, ([, amount]) => amount),
      occupies: occupied,
      gates: isGated ? occupied : new Int32Array(),
      isPhysics,
      stopEffect: Int32Array.from(stopRules, (rule) => {
        const effect = effects[rule] ?? "run on";
        return effect === "run on" ? RUNS_ON : effect === "hold" ? HOLDS : to(effect.leaveFor);
      }),
      stops: step.stops ? this.#resourceNumber(step.stops.resource) : -1,
      stopsRule: step.stops ? stopRules.indexOf(step.stops.rule) : -1,
      releases: step.releases === undefined ? -1 : this.#resourceNumber(step.releases),
      next: step.next === undefined ? first + ((index + 1) % process.steps.length) : to(step.next),
      chance: step.chance?.of ?? 0,
      chanceNext: step.chance ? to(step.chance.next) : -1,
      chanceStream: step.chance ? this.#stream(step.chance.resource ?? process.resource, `${step.name} chance`) : -1,
    };
  }

  /** A process that stops a resource is no work of that resource: its own stop does not concern it. */
  #occupied(process: ProcessSpec, step: StepSpec): Int32Array {
    if (isStop(process)) return new Int32Array();
    const shows = step.shows ?? [];
    for (const { resource, by } of shows) {
      invariant(by === undefined || !this.#stoppable.has(resource), "one of a family is stopped by taking its token", {
        resource,
      });
    }
    const names = new Set(step.stoppedBy ?? [process.resource, ...shows.map((show) => show.resource)]);
    return Int32Array.from(
      [...names].filter((name) => this.#stoppable.has(name)),
      (name) => this.#resourceNumber(name),
    );
  }

  #need(process: ProcessSpec, need: NeedSpec): Need {
    return {
      place: this.#number(this.#place, need.place),
      by: registerNumber(need.by),
      count: need.count ?? 1,
      meanwhile: this.#waitingState(process, need.meanwhile),
      othersTurn: this.#waitingState(process, need.whileOthersTurn ?? need.meanwhile),
      quiet: need.quiet ?? false,
      takes: registerNumber(need.takes),
    };
  }

  #give(give: GiveSpec): Give {
    return {
      place: this.#number(this.#place, give.place),
      by: registerNumber(give.by),
      count: give.count ?? 1,
      carries: registerNumber(give.carries ?? "cargo"),
    };
  }

  #show(show: ShowSpec): Show {
    const states = typeof show.state === "string" ? [show.state] : show.state;
    return {
      resource: this.#number(this.#resource, show.resource),
      by: registerNumber(show.by),
      states: Int32Array.from(states, (state) => this.#state(show.resource, state)),
    };
  }

  #draw(process: ProcessSpec, step: string, time: TimeSpec, isPatience = false): Draw {
    const samplers = time.laws.map(({ law, amount, factor = 1 }) =>
      amount === undefined
        ? new Sampler(law, { unit: TICKS_PER_SECOND * factor })
        : Sampler.ofRate(law, amount * factor),
    );
    // Who asks for the same number again, for one of several laws or for a patience must ask at the very time.
    const [law, ...others] = time.laws.map((each) => JSON.stringify(each));
    const isSteady = !isPatience && !time.again && time.until === undefined && others.every((other) => other === law);
    this.#laws.push({ samplers, isUntil: time.until !== undefined });
    this.#lawCount += samplers.length;
    return {
      samplers,
      firstLaw: this.#lawCount - samplers.length,
      stream: this.#stream(time.resource ?? process.resource, time.stream ?? step, isSteady ? law : ""),
      kind: -1,
      again: time.again ?? false,
      until: time.until === undefined ? -1 : Math.round(time.until * TICKS_PER_SECOND),
      clock: time.whileWorking === undefined ? -1 : this.#resourceNumber(time.whileWorking),
    };
  }

  #scale(process: ProcessSpec, scale: ScaleSpec, to: (name: string) => number): Scale {
    const { law, stream, resource, keeps, alone, below, above } = scale;
    this.#laws.push({ samplers: [new Sampler(law, { unit: TICKS_PER_SECOND })], isUntil: false });
    return {
      law: this.#lawCount++,
      stream: this.#stream(resource ?? process.resource, stream),
      keeps: keeps ?? false,
      alone: alone ?? false,
      low: below ? Math.round(below.limit * TICKS_PER_SECOND) : -Infinity,
      high: above ? Math.round(above.limit * TICKS_PER_SECOND) : Infinity,
      belowNext: below ? to(below.next) : -1,
      aboveNext: above ? to(above.next) : -1,
    };
  }

  /** Streams are shared by name: two steps that name the same one draw from it in turn. `law` is empty where no time can be drawn ahead. */
  #stream(resource: string, step: string, law = ""): number {
    const known = this.#streams.findIndex((stream) => stream.resource === resource && stream.step === step);
    const stream = known === -1 ? this.#streams.push({ resource, step }) - 1 : known;
    (this.#drawers[stream] ??= []).push(law);
    return stream;
  }

  /** Times can be drawn ahead where all who draw from the stream go by the same law. */
  #withKind(draw: Draw, drawnAhead: { law: number; stream: number }[]): Draw {
    const { stream, firstLaw, samplers } = draw;
    const [law, ...others] = this.#drawers[stream]!;
    if (law === "" || others.some((other) => other !== law) || samplers[0]!.isFixed) return draw;
    const known = drawnAhead.findIndex((kind) => kind.stream === stream);
    return { ...draw, kind: known === -1 ? drawnAhead.push({ law: firstLaw, stream }) - 1 : known };
  }

  /** Steps of one process that have one name, as every night of a calendar, are one activity. */
  #activity(resource: string, step: string, process: string): number {
    const known = this.#activities.findIndex(
      (each) => each.step === step && each.process === process && each.resource === resource,
    );
    return known === -1 ? this.#activities.push({ resource, step, process }) - 1 : known;
  }

  #counter(name: string): number {
    const known = this.#counters.indexOf(name);
    return known === -1 ? this.#counters.push(name) - 1 : known;
  }

  #counterOf(mark: StopMark): string {
    const name = `${mark.phase} of stop ${mark.stop}`;
    this.#stopMarks.set(this.#counter(name), mark);
    return name;
  }

  #waitingState(process: ProcessSpec, state: string | undefined): number {
    return state === undefined ? -1 : this.#state(process.resource, state);
  }

  #state(resource: string, state: string): number {
    const owner = this.#number(this.#resource, resource);
    const found = this.#states.findIndex((each) => each.resource === owner && each.name === state);
    invariant(found !== -1, "a state shown is one of the resource's states", { resource, state });
    return found;
  }

  #resourceNumber(name: string): number {
    return this.#number(this.#resource, name);
  }

  #number(numbers: ReadonlyMap<string, number>, name: string): number {
    const found = numbers.get(name);
    invariant(found !== undefined, "a name in a step table is declared", { name });
    return found;
  }

  #wantedByOne(need: Need, takers: readonly Int32Array[]): boolean {
    return need.by === NO_REGISTER && takers[need.place]!.length === 1;
  }
}

function numbered(items: readonly { readonly name: string }[], what: string): ReadonlyMap<string, number> {
  const numbers = new Map(items.map((item, i) => [item.name, i]));
  invariant(numbers.size === items.length, `no two of the same name: ${what}`, {
    names: items.map((item) => item.name),
  });
  return numbers;
}

function stepNumber(process: ProcessSpec, name: string): number {
  const found = process.steps.findIndex((step) => step.name === name);
  invariant(found !== -1, "a step that another names is in the same process", { process: process.name, step: name });
  return found;
}

/** What it does is to stop a resource. */
function isStop({ steps }: ProcessSpec): boolean {
  return steps.some(({ stops }) => stops !== undefined);
}

/** No state of the process tells that this is what it waits for. */
function isUnseen({ meanwhile, othersTurn }: Need): boolean {
  return meanwhile === -1 && othersTurn === -1;
}

function registerNumber(register: Register | undefined): number {
  return register === undefined ? NO_REGISTER : register === "cargo" ? CARGO : HAND;
}
