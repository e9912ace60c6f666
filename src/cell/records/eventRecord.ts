// Every change of a state in one replication, put into words: what began, for which shot, and which completion let it begin.
import type { StateKind } from "#cell/words/stateNames.ts";
import { EventLog, type LoggedEvent } from "#engine/run/eventLog.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { isDoneByOperator } from "#cell/table/crew.ts";
import { hasRole, type CellProcess, type CellResource, type CellStep } from "#cell/words/cellTable.ts";
import { operatorName } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import { planCell, slowestTurn, type CellPlan } from "#cell/layers/planCell.ts";

/** Null where there is nothing to say. */
export interface EventRecord {
  /** From the start of the replication, warm-up included. */
  readonly seconds: number;
  readonly resource: string;
  /** What the resource is. */
  readonly owner: CellResource["kind"];
  readonly state: string;
  readonly kind: StateKind;
  /** The step that shows this state, or that is waited for. */
  readonly step: string | null;
  readonly role: StepRole | null;
  /** The station whose shot it serves, and the number of that shot at the station, from 1. */
  readonly station: string | null;
  readonly shot: number | null;
  /** Whose step ended last of all that this start needed, and when that step had begun. */
  readonly boundByResource: string | null;
  readonly boundBySeconds: number | null;
  readonly operator: string | null;
  /** The resource at which the process of the step works. */
  readonly at: string | null;
  /** The number of the activity whose completion bound the start, among those of the plan; -1 where there is none. */
  readonly activity: number;
  /** Parts of the removal that ends here; with a takeaway, parts that leave the resource now. */
  readonly parts: number;
}

/** Runs a replication anew for its events: the same scenario, seed and number bring back the same run. */
export function eventRecorder(scenario: Scenario): (replication: number) => Generator<EventRecord> {
  const plan = planCell(scenario);
  const until = Math.round(scenario.run.length * TICKS_PER_SECOND);
  return (replication) => {
    const log = new EventLog();
    const { seed } = scenario.run;
    const simulation = new Simulation(plan.program, { seed, replication, isActive: plan.isActive, log });
    return eventsUntil(until, { plan, simulation, log });
  };
}

export interface LoggedRun {
  readonly plan: CellPlan;
  readonly simulation: Simulation;
  readonly log: EventLog;
}

/** The events of a run that has not begun, up to and including a tick; the run goes on as they are read. */
export function eventsUntil(until: number, run: LoggedRun): Generator<EventRecord> {
  return decode(readUntil(until, run), run.plan);
}

/** A run is read so many turns of the cell at a time. */
const turnsRead = 50;

function* readUntil(until: number, { plan, simulation, log }: LoggedRun): Generator<LoggedEvent> {
  const slice = Math.max(1, Math.round(turnsRead * slowestTurn(plan)));
  for (let tick = 0; tick < until;) {
    tick = Math.min(until, tick + slice);
    simulation.runUntil(tick);
    yield* log.drain();
  }
}

/** States in which a part waits for the step that lets it go. */
const keepsPart: readonly string[] = [stateNames.blocked, stateNames.awaitingTakeaway];

interface Shot {
  readonly station: string | null;
  readonly shot: number | null;
}

const noShot: Shot = { station: null, shot: null };

function* decode(events: Iterable<LoggedEvent>, plan: CellPlan): Generator<EventRecord> {
  const { scenario, program, resources, processes, steps, activities } = plan;
  const cavities = new Map(scenario.stations.map(({ name, cavities: count }) => [name, count]));
  // By resource: parts of one removal from it or from its mask.
  const partsOf = resources.map(({ station }) => (station === undefined ? 0 : cavities.get(station)!));
  const removing = new Set<number>();
  const heldAtStart = scenario.run.start === "cold" ? 0 : 1;
  const handsOver = scenario.takeaway !== undefined;
  let last = noShot;
  for (const event of events) {
    const owner = resources[event.resource]!;
    if (owner.kind === "shift") continue;
    const { name: state, kind } = program.states[event.state]!;
    const step = steps[event.row];
    const process = step && processes[program.rows[event.row]!.process]!;
    const own = shotOf(process, event.cycle, heldAtStart) ?? shotServed(process, kind, last);
    // A continuous screw does not follow up a shot: it is on its way to the next.
    if (step?.role === "mold.drop") last = own;
    const removes = step?.role === "mold.remove";
    const removed = removing.has(event.resource) && !removes ? partsOf[event.resource]! : 0;
    if (removed > 0) removing.delete(event.resource);
    // A station that is stopped may begin to wait for room: nothing has bound that, and no part leaves.
    const leaves = step !== undefined && event.boundBy !== -1 && partLeaves(step);
    const passed = leaves && !keepsPart.includes(state) ? 1 : 0;
    if (removes && kind === "working" && partsOf[event.resource]! > 0) removing.add(event.resource);
    const binding = activities[event.boundBy];
    // Written out in one piece: there are millions, and copies of copies would take most of the time.
    yield {
      seconds: event.time / TICKS_PER_SECOND,
      resource: owner.name,
      owner: owner.kind,
      state,
      kind,
      step: step?.name ?? null,
      role: step?.role ?? null,
      station: own.station,
      shot: own.shot,
      boundByResource: binding?.resource ?? null,
      boundBySeconds: binding ? event.boundTime / TICKS_PER_SECOND : null,
      operator: isByOperator(event, step) ? operatorName(event.helper) : null,
      at: process?.resource ?? null,
      activity: event.boundBy,
      parts: handsOver ? passed : removed,
    };
  }
}

/** Steps with which one part leaves a resource. */
function partLeaves(step: CellStep): boolean {
  return hasRole(step, "part.handOver", "server.passOn", "server.refuse");
}

/** A head replaces the shot that was dropped last; the first that a cold start fills replaces none. Undefined for what serves all. */
function shotOf(process: CellProcess | undefined, cycle: number, heldAtStart: number): Shot | undefined {
  if (process?.station === undefined) return undefined;
  const shot = cycle + (process.kind === "head" ? heldAtStart : 1);
  return { station: process.station, shot: shot === 0 ? null : shot };
}

/** Valve and plasticator follow up the shot delivered last, until they come to rest. */
function shotServed(process: CellProcess | undefined, kind: StateKind, served: Shot): Shot {
  return (process?.kind === "valve" || process?.kind === "screw") && kind === "working" ? served : noShot;
}

/** The number of an operator stays with the process after the release, and means nothing in later steps. */
function isByOperator({ helper }: LoggedEvent, step: CellStep | undefined): boolean {
  return helper >= 0 && step !== undefined && isDoneByOperator(step);
}
