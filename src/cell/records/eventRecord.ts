// Every change of a state in one replication, put into words: what began, for which shot, and which completion let it begin.
import { EventLog, type LoggedEvent } from "#engine/run/eventLog.ts";
import type { Program } from "#engine/compiler/program.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { maskOf, PLASTICATOR, SHIFT, stationServed, VALVE } from "#cell/words/cycleNames.ts";
import { planCell, slowestTurn, type CellPlan } from "#cell/layers/planCell.ts";
import { partLeaves } from "#cell/words/takeawayWords.ts";

/** Null where there is nothing to say. */
export interface EventRecord {
  /** From the start of the replication, warm-up included. */
  readonly seconds: number;
  readonly resource: string;
  readonly state: string;
  readonly kind: string;
  /** The step that shows this state, or that is waited for. */
  readonly step: string | null;
  /** The station whose shot it serves, and the number of that shot at the station, from 1. */
  readonly station: string | null;
  readonly shot: number | null;
  /** Whose step ended last of all that this start needed, and when that step had begun. */
  readonly boundByResource: string | null;
  readonly boundBySeconds: number | null;
  readonly operator: string | null;
  /** Parts that a removal which ends here has taken out; where something comes after the mold, those that leave the resource now. */
  readonly parts: number;
}

/** Runs a replication anew for its events: the same scenario, seed and number bring back the same run. */
export function eventRecorder(scenario: Scenario): (replication: number) => Generator<EventRecord> {
  const plan = planCell(scenario);
  return (replication) => decode(eventsOf(plan, replication), plan.program, scenario);
}

/** A run is read so many turns of the cell at a time. */
const turnsRead = 50;

function* eventsOf(plan: CellPlan, replication: number): Generator<LoggedEvent> {
  const { seed, length } = plan.scenario.run;
  const until = Math.round(length * TICKS_PER_SECOND);
  const slice = Math.max(1, Math.round(turnsRead * slowestTurn(plan)));
  const log = new EventLog();
  const simulation = new Simulation(plan.program, { seed, replication, isActive: plan.isActive, log });
  for (let tick = 0; tick < until;) {
    tick = Math.min(until, tick + slice);
    simulation.runUntil(tick);
    yield* log.drain();
  }
}

/** States in which a part waits for the step that lets it go. */
const keepsPart: readonly string[] = ["blocked", "awaiting takeaway"];

interface Shot {
  readonly station: string | null;
  readonly shot: number | null;
}

const noShot: Shot = { station: null, shot: null };

function* decode(events: Iterable<LoggedEvent>, program: Program, scenario: Scenario): Generator<EventRecord> {
  // A mask takes out the parts of its station.
  const cavities = new Map(
    scenario.stations.flatMap(({ name, cavities: count }) => [[name, count] as const, [maskOf(name), count] as const]),
  );
  const stations = scenario.stations.map(({ name }) => name);
  // The station that each process works for, looked up once.
  const served = new Map<string, string | null>();
  const serving = (owner: string): string | null => {
    const station = stationServed(owner, stations) ?? null;
    served.set(owner, station);
    return station;
  };
  const removing = new Set<string>();
  const heldAtStart = scenario.run.start === "cold" ? 0 : 1;
  const handsOver = scenario.takeaway !== undefined;
  let last = noShot;
  for (const event of events) {
    if (program.table.resources[event.resource]!.name === SHIFT) continue;
    const { name: state, kind } = program.states[event.state]!;
    const row = program.rows[event.row];
    const step = row?.name ?? null;
    const owner = row === undefined ? "" : program.table.processes[row.process]!.name;
    const known = served.get(owner);
    const station = known === undefined ? serving(owner) : known;
    const own = station === null ? shotServed(kind, owner, last) : shotOf(station, owner, event.cycle, heldAtStart);
    // A die that never stops does not follow up a shot: it is on its way to the next.
    if (step === "drop") last = own;
    const resource = program.table.resources[event.resource]!.name;
    const removed = removing.has(resource) && step !== "remove" ? (cavities.get(resource) ?? 0) : 0;
    if (removed > 0) removing.delete(resource);
    const passed = step !== null && !keepsPart.includes(state) && partLeaves(step) ? 1 : 0;
    if (step === "remove" && kind === "working" && cavities.has(resource)) removing.add(resource);
    const binding = program.activities[event.boundBy];
    // Written out in one piece: there are millions, and copies of copies would take most of the time.
    yield {
      seconds: event.time / TICKS_PER_SECOND,
      resource,
      state,
      kind,
      step,
      station: own.station,
      shot: own.shot,
      boundByResource: binding?.resource ?? null,
      boundBySeconds: binding ? event.boundTime / TICKS_PER_SECOND : null,
      operator: isByHand(event, program) ? `operator ${event.hand + 1}` : null,
      parts: handsOver ? passed : removed,
    };
  }
}

/** A head replaces the shot that was dropped last; the first that a cold start fills replaces none. */
function shotOf(station: string, owner: string, cycle: number, heldAtStart: number): Shot {
  const shot = cycle + (owner === station || owner === maskOf(station) ? 1 : heldAtStart);
  return { station, shot: shot === 0 ? null : shot };
}

/** Valve and plasticator follow up the shot delivered last, until they come to rest. */
function shotServed(kind: string, owner: string, served: Shot): Shot {
  return (owner === VALVE || owner === PLASTICATOR) && kind === "working" ? served : noShot;
}

/** An operator stays in the register after the hand has let go, and says nothing of later steps. */
function isByHand({ row, hand }: LoggedEvent, program: Program): boolean {
  const step = program.rows[row];
  if (!step || hand < 0) return false;
  const { steps } = program.table.processes[step.process]!;
  return steps.some(({ name, shows }) => name === step.name && shows?.some((show) => show.by === "hand") === true);
}
