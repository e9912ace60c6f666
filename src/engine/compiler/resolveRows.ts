// Turns the steps of a table into rows: every name is resolved and checked once, so that the loop meets no text.
import { invariant } from "#foundation/invariant.ts";
import { BY_DISTRIBUTION, BY_TIMETABLE, CARGO, HELPER, HOLDS, NO_REGISTER, RUNS_ON } from "#core/border/numbers.ts";
import { Sampler, TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Names } from "./names.ts";
import type { Draw, Give, Need, Row, Scale, Show } from "./row.ts";
import type * as spec from "./stepTable.ts";

/** In the order of their numbers in the core. */
const stopRules: readonly spec.StopRule[] = ["finish", "hold", "scrap"];

/** What the steps of one process are resolved with. */
interface Scope {
  readonly names: Names;
  readonly process: spec.ProcessSpec;
  /** What the process does is to stop a resource. */
  readonly isStop: boolean;
  /** Row of its first step. */
  readonly firstRow: number;
  /** Resources that some step of the table stops. */
  readonly stoppable: ReadonlySet<string>;
  /** Of the whole table, by description: equal distributions share one. */
  readonly samplers: Map<string, Sampler>;
}

/** One process after the other. */
export function resolveRows({ processes }: spec.StepTable, names: Names, firstRow: readonly number[]): readonly Row[] {
  const stops = processes.flatMap(({ steps }) => steps.flatMap((step) => step.stops?.resource ?? []));
  const shared = { names, stoppable: new Set(stops), samplers: new Map<string, Sampler>() };
  return processes.flatMap((process, number) => {
    const scope = { ...shared, process, isStop: isStop(process), firstRow: firstRow[number]! };
    return process.steps.map((step, index) => {
      const following = scope.firstRow + ((index + 1) % process.steps.length);
      return { process: number, ...rowOf(step, following, scope) };
    });
  });
}

/** What it does is to stop a resource. */
export function isStop({ steps }: spec.ProcessSpec): boolean {
  return steps.some(({ stops }) => stops !== undefined);
}

/** Number of a step among those of its process. */
export function stepNumber(process: spec.ProcessSpec, name: string): number {
  const found = process.steps.findIndex((step) => step.name === name);
  invariant(found !== -1, "a step that another names is in the same process", { process: process.name, step: name });
  return found;
}

function rowOf(step: spec.StepSpec, following: number, scope: Scope): Omit<Row, "process"> {
  const { names, process } = scope;
  const occupies = occupied(step, scope);
  const isPhysics = step.stopped === "physics";
  const isGated = !isPhysics && (step.time !== undefined || step.needs !== undefined);
  return {
    name: step.name,
    needs: (step.needs ?? []).map((need) => needOf(need, scope)),
    standsInLine: step.standsInLine ?? false,
    priority: step.priority ?? process.priority ?? 0,
    ...patienceOf(step, scope),
    shows: (step.shows ?? []).map((show) => showOf(show, names)),
    draw: step.time ? drawOf(step.name, step.time, scope) : null,
    activity: step.time ? activityOf(step.name, step.time.resource, scope) : -1,
    isClock: step.isClock ?? false,
    scale: step.scale ? scaleOf(step.scale, scope) : null,
    gives: (step.gives ?? []).map((give) => giveOf(give, names)),
    counts: countsOf(step, names),
    occupies,
    gates: isGated ? occupies : [],
    isPhysics,
    stopEffect: stopEffects(step, scope),
    stops: step.stops ? names.resource(step.stops.resource) : -1,
    stopsRule: step.stops ? stopRules.indexOf(step.stops.rule) : -1,
    releases: step.releases === undefined ? -1 : names.resource(step.releases),
    next: step.next === undefined ? following : rowNumber(step.next, scope),
    turns: step.turns ?? false,
    ...chanceOf(step, scope),
  };
}

function activityOf(step: string, resource: string | undefined, { names, process }: Scope): number {
  const owner = process.resource;
  return names.activity({ resource: resource ?? owner, step, process: process.name, owner });
}

function rowNumber(name: string, { process, firstRow }: Scope): number {
  return firstRow + stepNumber(process, name);
}

function countsOf({ counts = {}, stopMarks = [] }: spec.StepSpec, names: Names): Row["counts"] {
  const counted = Object.entries(counts).map(([name, amount]) => ({ counter: names.counter(name), amount }));
  return [...counted, ...stopMarks.map((mark) => ({ counter: names.stopCounter(mark), amount: 1 }))];
}

function patienceOf(
  { name, patience }: spec.StepSpec,
  scope: Scope,
): Pick<Row, "patience" | "patienceActivity" | "patienceNext"> {
  if (!patience) return { patience: null, patienceActivity: -1, patienceNext: -1 };
  return {
    patience: drawOf(name, patience.time, scope),
    patienceActivity: activityOf(`${name} patience`, undefined, scope),
    patienceNext: rowNumber(patience.leaveFor, scope),
  };
}

function chanceOf({ name, chance }: spec.StepSpec, scope: Scope): Pick<Row, "chance" | "chanceNext" | "chanceStream"> {
  if (!chance) return { chance: 0, chanceNext: -1, chanceStream: -1 };
  return {
    chance: chance.of,
    chanceNext: rowNumber(chance.next, scope),
    chanceStream: scope.names.stream(chance.resource ?? scope.process.resource, `${name} chance`),
  };
}

/** A process that stops a resource is no work of that resource: its own stop does not concern it. */
function occupied(step: spec.StepSpec, { names, process, isStop: stops, stoppable }: Scope): readonly number[] {
  if (stops) return [];
  const shows = step.shows ?? [];
  for (const { resource, by } of shows) {
    invariant(by === undefined || !stoppable.has(resource), "one of a family is stopped by taking its token", {
      resource,
    });
  }
  const concerned = new Set(step.stoppedBy ?? [process.resource, ...shows.map((show) => show.resource)]);
  return [...concerned].filter((name) => stoppable.has(name)).map((name) => names.resource(name));
}

function stopEffects({ stopped }: spec.StepSpec, scope: Scope): readonly number[] {
  const effects = typeof stopped === "object" ? stopped : {};
  return stopRules.map((rule) => {
    const effect = effects[rule] ?? "run on";
    if (effect === "run on") return RUNS_ON;
    return effect === "hold" ? HOLDS : rowNumber(effect.leaveFor, scope);
  });
}

function needOf(need: spec.NeedSpec, { names, process }: Scope): Need {
  const waitingState = (state: string | undefined): number =>
    state === undefined ? -1 : names.state(process.resource, state);
  return {
    place: names.place(need.place),
    by: registerNumber(need.by),
    count: need.count ?? 1,
    meanwhile: waitingState(need.meanwhile),
    othersTurn: waitingState(need.whileOthersTurn ?? need.meanwhile),
    quiet: need.quiet ?? false,
    takes: registerNumber(need.takes),
    causes: (need.causes ?? []).map(({ resource, state, shows }) => ({
      resource: names.resource(resource),
      state: names.state(resource, state),
      shows: names.state(process.resource, shows),
    })),
  };
}

function giveOf({ place, by, count, carries }: spec.GiveSpec, names: Names): Give {
  return {
    place: names.place(place),
    by: registerNumber(by),
    count: count ?? 1,
    carries: registerNumber(carries ?? "cargo"),
  };
}

function showOf({ resource, by, state }: spec.ShowSpec, names: Names): Show {
  const states = typeof state === "string" ? [state] : state;
  return {
    resource: names.resource(resource),
    by: registerNumber(by),
    states: states.map((each) => names.state(resource, each)),
  };
}

function registerNumber(register: spec.Register | undefined): number {
  return register === undefined ? NO_REGISTER : register === "cargo" ? CARGO : HELPER;
}

function drawOf(step: string, time: spec.TimeSpec, { names, process, samplers }: Scope): Draw {
  return {
    samplers: time.distributions.map((each) => sharedSampler(each, samplers)),
    stream: names.stream(time.resource ?? process.resource, time.stream ?? step),
    again: time.again ?? false,
    until: untilTick(time),
    clock: time.whileWorking === undefined ? -1 : names.resource(time.whileWorking),
  };
}

function untilTick({ until = BY_DISTRIBUTION }: spec.TimeSpec): number {
  if (until === BY_DISTRIBUTION) return until;
  return until === "timetable" ? BY_TIMETABLE : Math.round(until * TICKS_PER_SECOND);
}

function scaleOf(scale: spec.ScaleSpec, scope: Scope): Scale {
  const { distribution, stream, resource, keeps, alone, below, above } = scale;
  return {
    sampler: sharedSampler({ distribution }, scope.samplers),
    stream: scope.names.stream(resource ?? scope.process.resource, stream),
    keeps: keeps ?? false,
    alone: alone ?? false,
    low: below ? Math.round(below.limit * TICKS_PER_SECOND) : -Infinity,
    high: above ? Math.round(above.limit * TICKS_PER_SECOND) : Infinity,
    belowNext: below ? rowNumber(below.next, scope) : -1,
    aboveNext: above ? rowNumber(above.next, scope) : -1,
  };
}

function sharedSampler(time: spec.DrawnTime, samplers: Map<string, Sampler>): Sampler {
  const key = JSON.stringify(time);
  const known = samplers.get(key);
  if (known) return known;
  const { distribution, amount, factor = 1, trace } = time;
  const sampler =
    amount === undefined
      ? new Sampler(distribution, { unit: TICKS_PER_SECOND * factor, inOrder: trace !== undefined })
      : Sampler.ofRate(distribution, amount * factor);
  samplers.set(key, sampler);
  return sampler;
}
