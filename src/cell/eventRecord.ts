// Every change of a state in one replication, put into words: what began, for which shot, and which completion let it begin.
import { EventLog, type LoggedEvent } from "#engine/eventLog.ts";
import type { Program } from "#engine/program.ts";
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { maskOf, PLASTICATOR, stationServed, VALVE } from "./cycleNames.ts";
import { planCell } from "./planCell.ts";
import { runCell } from "./runCell.ts";

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
  /** Parts that a removal which ends here has taken out. */
  readonly parts: number;
}

/** Runs a replication anew for its events: the same scenario, seed and number bring back the same run. */
export function eventRecorder(scenario: Scenario): (replication: number) => Generator<EventRecord> {
  const plan = planCell(scenario);
  return (replication) => {
    const log = new EventLog();
    const { untilTick } = runCell(plan, { replication, warmup: 0, log });
    return decode(log, plan.program, scenario, untilTick);
  };
}

interface Shot {
  readonly station: string | null;
  readonly shot: number | null;
}

const noShot: Shot = { station: null, shot: null };

function* decode(log: EventLog, program: Program, scenario: Scenario, untilTick: number): Generator<EventRecord> {
  // A mask takes out the parts of its station.
  const cavities = new Map(
    scenario.stations.flatMap(({ name, cavities: count }) => [[name, count] as const, [maskOf(name), count] as const]),
  );
  const stations = scenario.stations.map(({ name }) => name);
  const removing = new Set<string>();
  const heldAtStart = scenario.run.start === "cold" ? 0 : 1;
  let served = noShot;
  for (const event of log) {
    // To find what binds the last starts, the run goes on a little beyond its end.
    if (event.time > untilTick) return;
    const found = describe(event, program);
    const process = program.rows[event.row]?.process;
    const owner = process === undefined ? "" : program.table.processes[process]!.name;
    const station = stationServed(owner, stations);
    const own =
      station === undefined ? shotServed(found, owner, served) : shotOf(station, owner, event.cycle, heldAtStart);
    // A die that never stops does not follow up a shot: it is on its way to the next.
    if (found.step === "drop") served = own;
    const parts = removing.has(found.resource) && found.step !== "remove" ? (cavities.get(found.resource) ?? 0) : 0;
    if (parts > 0) removing.delete(found.resource);
    if (found.step === "remove" && found.kind === "working" && cavities.has(found.resource))
      removing.add(found.resource);
    yield { ...found, ...own, parts };
  }
}

/** A head replaces the shot that was dropped last; the first that a cold start fills replaces none. */
function shotOf(station: string, owner: string, cycle: number, heldAtStart: number): Shot {
  const shot = cycle + (owner === station || owner === maskOf(station) ? 1 : heldAtStart);
  return { station, shot: shot === 0 ? null : shot };
}

/** Valve and plasticator follow up the shot delivered last, until they come to rest. */
function shotServed({ kind }: { readonly kind: string }, owner: string, served: Shot): Shot {
  return (owner === VALVE || owner === PLASTICATOR) && kind === "working" ? served : noShot;
}

function describe(event: LoggedEvent, program: Program): Omit<EventRecord, "station" | "shot" | "parts"> {
  const state = program.states[event.state]!;
  const row = program.rows[event.row];
  const binding = program.activities[event.boundBy];
  return {
    seconds: event.time / TICKS_PER_SECOND,
    resource: program.table.resources[event.resource]!.name,
    state: state.name,
    kind: state.kind,
    step: row?.name ?? null,
    boundByResource: binding?.resource ?? null,
    boundBySeconds: binding ? event.boundTime / TICKS_PER_SECOND : null,
    operator: isByHand(event, program) ? `operator ${event.hand + 1}` : null,
  };
}

/** An operator stays in the register after the hand has let go, and says nothing of later steps. */
function isByHand({ row, hand }: LoggedEvent, program: Program): boolean {
  const step = program.rows[row];
  if (!step || hand < 0) return false;
  const { steps } = program.table.processes[step.process]!;
  return steps.some(({ name, shows }) => name === step.name && shows?.some((show) => show.by === "hand") === true);
}
