// Runs a cell for a few shots after its warm-up, or later, and writes down every state of every resource and the chain that bound them.
import { EventLog, type LoggedEvent } from "#engine/run/eventLog.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import { hasRole, shotRoles, type CellResource } from "#cell/words/cellTable.ts";
import { slowestTurn, type CellPlan } from "#cell/layers/planCell.ts";
import type { ChainSegment, TimelineInterval, TimelineRecord } from "#cell/records/timelineRecord.ts";

const replication = 1;
/** A run is read so many turns of the cell at a time. */
const turnsRead = 50;

/** In ticks of the run. */
export interface Stretch {
  readonly from: number;
  readonly until: number;
}

/**
 * From so many seconds of the run on; undefined where the cell makes too few shots to show any. The random numbers are those of the
 * study's first replication, so that the stretch is a piece of what was measured.
 */
export function cycleTimeline(plan: CellPlan, begins: number): TimelineRecord | undefined {
  const run = runTo(Math.round(begins * TICKS_PER_SECOND), plan);
  const { marks } = run.simulation;
  const count = plan.scenario.stations.length;
  // A turn of all stations before the stretch, since the chain's first link begins where the observation does, not where the
  // step did; and a turn after it, since which chain goes on is known only later.
  runOn(run.simulation, plan, () => marks.ticks.length > lastShown(marks, count) + count);
  const from = marks.ticks[Math.min(count, marks.ticks.length) - 1];
  const until = marks.ticks[lastShown(marks, count)] ?? marks.ticks.at(-1);
  return from === undefined || until === undefined || until <= from ? undefined : recordOf({ from, until }, run, plan);
}

/** A stretch that is known, in a longer one around it that is run for the critical path. */
export function stretchTimeline(plan: CellPlan, stretch: Stretch, { from, until }: Stretch): TimelineRecord {
  const run = runTo(from, plan);
  run.simulation.runUntil(until);
  return recordOf(stretch, run, plan);
}

interface Run {
  readonly simulation: Simulation;
  readonly log: EventLog;
  /** The state of each resource at the beginning of the observation. */
  readonly before: readonly LoggedEvent[];
}

function runTo(tick: number, plan: CellPlan): Run {
  const log = new EventLog();
  const simulation = new Simulation(plan.program, { seed: plan.scenario.run.seed, replication, log }, plan.marked);
  const before = lastStates(simulation, log, plan, tick);
  simulation.restartObservation();
  return { simulation, log, before };
}

function recordOf(stretch: Stretch, { simulation, log, before }: Run, plan: CellPlan): TimelineRecord {
  const shown = plan.resources.filter((resource) => isShown(resource, plan)).map(({ name }) => name);
  const intervals = intervalsIn(stretch, [...before, ...log.drain()], plan);
  return {
    replication,
    from: stretch.from / TICKS_PER_SECOND,
    seconds: (stretch.until - stretch.from) / TICKS_PER_SECOND,
    resources: shown,
    intervals: intervals.filter(({ resource }) => shown.includes(resource)),
    chain: chainIn(stretch, simulation, plan).map((segment) => ({ ...segment, resource: rowOf(segment, plan) })),
  };
}

/** Of a server with many places the first ones stand for all. */
const mostPlaces = 4;

const placesOf = (server: string, { resources }: CellPlan): readonly string[] =>
  resources.filter(({ group }) => group === server).map(({ name }) => name);

function isShown({ name, kind, group }: CellResource, plan: CellPlan): boolean {
  if (group !== undefined) return placesOf(group, plan).indexOf(name) < mostPlaces;
  return kind !== "shift";
}

/** The row of a link: of a server the place that works, if it is shown. */
function rowOf({ resource, process }: Pick<ChainSegment, "resource" | "process">, plan: CellPlan): string {
  const owner = plan.processes.find(({ name }) => name === process);
  if (!owner || (owner.kind !== "server" && owner.kind !== "age clock")) return resource;
  const place = plan.resources.find(({ name }) => name === owner.resource)!;
  return isShown(place, plan) ? place.name : placesOf(place.group!, plan)[0]!;
}

/** A station that is slower than this many turns of the others, as in a stop, is not waited for. */
const mostTurns = 6;

/** The shot at which the stretch ends: after two turns, or later where some station has not yet had two shots. */
function lastShown({ ticks, counters }: Simulation["marks"], count: number): number {
  const first = count - 1;
  const usual = first + (count === 1 ? 3 : 2 * count + 1);
  const most = first + mostTurns * count;
  const shots = new Map<number, number>();
  for (let i = first; i < Math.min(ticks.length, most); i++) {
    shots.set(counters[i]!, (shots.get(counters[i]!) ?? 0) + 1);
    const isWhole = shots.size === count && [...shots.values()].every((each) => each > 1);
    if (i >= usual && isWhole) return i;
  }
  return ticks.length < most ? most : usual;
}

/** Never beyond the end of the run, so that the picture is a piece of what was measured. */
function runOn(simulation: Simulation, plan: CellPlan, isEnough: () => boolean): void {
  const turn = Math.max(1, Math.round(slowestTurn(plan)));
  const end = Math.round(plan.scenario.run.length * TICKS_PER_SECOND);
  for (let tick = simulation.now; tick < end && !isEnough() && !simulation.standstill;) {
    tick = Math.min(end, tick + turn);
    simulation.runUntil(tick);
  }
}

/** Runs to the stretch, and keeps of the way there only the state that each resource was in last. */
function lastStates(simulation: Simulation, log: EventLog, plan: CellPlan, until: number): readonly LoggedEvent[] {
  const slice = Math.max(1, Math.round(turnsRead * slowestTurn(plan)));
  const last = new Map<number, LoggedEvent>();
  const read = (): void => log.drain().forEach((event) => void last.set(event.resource, event));
  for (let tick = 0; tick < until;) {
    tick = Math.min(until, tick + slice);
    simulation.runUntil(tick);
    read();
  }
  if (until === 0) simulation.runUntil(0);
  read();
  return [...last.values()];
}

function intervalsIn(stretch: Stretch, log: readonly LoggedEvent[], plan: CellPlan): TimelineInterval[] {
  const { states, table } = plan.program;
  const changes = table.resources.map((): Change[] => []);
  for (const event of log) {
    const known = changes[event.resource]!;
    if (known.at(-1)?.time === event.time) known.pop();
    if (isNew(event, known.at(-1), plan)) known.push(event);
  }
  return changes.flatMap((known, resource) =>
    known.flatMap(({ time, state }, i) => {
      const next = known[i + 1]?.time ?? Infinity;
      const span = within(stretch, time, next);
      const { name, kind } = states[state]!;
      const isCut = time < stretch.from || next > stretch.until;
      return span ? [{ resource: table.resources[resource]!.name, state: name, kind, ...span, isCut }] : [];
    }),
  );
}

type Change = Pick<LoggedEvent, "time" | "state" | "cycle">;

/** Two steps of work in the same state are two bars, such as two parisons; a wait or a stop that is logged again goes on. */
function isNew(event: Change, last: Change | undefined, { program }: CellPlan): boolean {
  if (last?.state !== event.state) return true;
  const isWork = program.states[event.state]!.kind === "working";
  return isWork && event.cycle !== -1 && last.cycle !== -1 && event.cycle !== last.cycle;
}

/** Back from the last drop that started: by then the ways of the steps within the stretch have mostly met. */
function chainIn(stretch: Stretch, { chain }: Simulation, { activities }: CellPlan): ChainSegment[] {
  const isShot = (node: number): boolean => {
    const { role } = activities[chain.activityOf(node)]!;
    return role !== undefined && hasRole({ role }, ...shotRoles);
  };
  let head = chain.last;
  while (head > 0 && !isShot(head)) head--;
  const segments: ChainSegment[] = [];
  let end = Math.max(stretch.until, head < 0 ? 0 : chain.startOf(head));
  for (let node = head; node !== -1; node = chain.parentOf(node)) {
    const start = chain.startOf(node);
    const span = within(stretch, start, end);
    if (span) segments.push({ ...activities[chain.activityOf(node)]!, ...span, tied: chain.isTied(node) });
    end = start;
  }
  return segments.toReversed();
}

/** Seconds from the beginning of the stretch; undefined where nothing of it lies inside. */
function within({ from, until }: Stretch, start: number, end: number): { start: number; end: number } | undefined {
  const [first, last] = [Math.max(start, from), Math.min(end, until)];
  return last > first ? { start: (first - from) / TICKS_PER_SECOND, end: (last - from) / TICKS_PER_SECOND } : undefined;
}
