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

interface Stretch {
  readonly from: number;
  readonly until: number;
}

/**
 * From so many seconds of the run on; undefined where the cell makes too few shots to show any. The random numbers are those of the
 * study's first replication, so that the stretch is a piece of what was measured.
 */
export function cycleTimeline(plan: CellPlan, begins: number): TimelineRecord | undefined {
  const log = new EventLog();
  const simulation = new Simulation(plan.program, { seed: plan.scenario.run.seed, replication, log }, plan.marked);
  const first = Math.round(begins * TICKS_PER_SECOND);
  const before = lastStates(simulation, log, plan, first);
  simulation.restartObservation();
  const count = plan.scenario.stations.length;
  const shots = shotsShown(count);
  // A turn of all stations before the stretch, since the chain's first link begins where the observation does, not where the
  // step did; and a turn after it, since which chain goes on is known only later.
  runShots(simulation, plan, first, 2 * count + shots + 1);
  const { ticks } = simulation.marks;
  const from = ticks[Math.min(count, ticks.length) - 1];
  const until = ticks[count - 1 + shots] ?? ticks.at(-1);
  if (from === undefined || until === undefined || until <= from) return undefined;
  const stretch = { from, until };
  const shown = plan.resources.filter((resource) => isShown(resource, plan)).map(({ name }) => name);
  return {
    replication,
    from: from / TICKS_PER_SECOND,
    seconds: (until - from) / TICKS_PER_SECOND,
    resources: shown,
    intervals: intervalsIn(stretch, [...before, ...log.drain()], plan).filter(({ resource }) =>
      shown.includes(resource),
    ),
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

/** Some two turns of every station, fewer where many stations would make the steps too small to see. */
function shotsShown(stations: number): number {
  if (stations === 1) return 3;
  return stations <= 4 ? 2 * stations + 1 : Math.ceil(1.25 * stations);
}

/** Never beyond the end of the run, so that the picture is a piece of what was measured. */
function runShots(simulation: Simulation, plan: CellPlan, from: number, shots: number): void {
  const turn = Math.max(1, Math.round(slowestTurn(plan)));
  const end = Math.round(plan.scenario.run.length * TICKS_PER_SECOND);
  for (let tick = from; tick < end && simulation.marks.ticks.length < shots && !simulation.standstill;) {
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
  const changes = table.resources.map((): { time: number; state: number }[] => []);
  for (const { time, resource, state } of log) {
    const known = changes[resource]!;
    const last = known.at(-1);
    if (last?.time === time) known.pop();
    if (known.at(-1)?.state !== state) known.push({ time, state });
  }
  return changes.flatMap((known, resource) =>
    known.flatMap(({ time, state }, i) => {
      const span = within(stretch, time, known[i + 1]?.time ?? stretch.until);
      const { name, kind } = states[state]!;
      return span ? [{ resource: table.resources[resource]!.name, state: name, kind, ...span }] : [];
    }),
  );
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
