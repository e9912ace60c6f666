// A run that keeps its critical path and the time of every count beside its events, for one who follows it step by step.
import { EventLog } from "#engine/run/eventLog.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { purgedCounter } from "#cell/words/cycleNames.ts";
import { planCell, slowestTurn, type CellPlan } from "#cell/layers/planCell.ts";
import { eventsUntil, type EventRecord } from "./eventRecord.ts";

/** One step on the way back: the activity by its number in the plan, and the link that bound its start, -1 at the beginning. */
interface RunLink {
  readonly activity: number;
  readonly seconds: number;
  readonly before: number;
  readonly isTied: boolean;
}

export interface RecordedRun {
  readonly plan: CellPlan;
  /** So long the events go on after the time that was asked for. */
  readonly secondsAfter: number;
  /** Read them once, from the start of the run on. */
  readonly events: Iterable<EventRecord>;
  /** Of the run as far as it has been read. */
  readonly links: () => readonly RunLink[];
  /** By counter: seconds and amount of each rise. */
  readonly rises: ReadonlyMap<string, { readonly amount: number; readonly seconds: number[] }>;
}

/** Steps kept before the path is folded: some days of a cell. */
const mostLinks = 1 << 21;

/** States that have begun within the stretch mostly end within so many turns of the cell after it. */
const turnsAfter = 2;

/** Up to `until` seconds and a little beyond, so that the states that go on at its end have an end. */
export function recordedRun(scenario: Scenario, replication: number, until: number): RecordedRun {
  const plan = planCell(scenario);
  const rises = new Map(countersOf(plan).map(([counter, amount]) => [counter, { amount, seconds: [] as number[] }]));
  const log = new EventLog();
  const simulation = new Simulation(plan.program, {
    seed: scenario.run.seed,
    replication,
    isActive: plan.isActive,
    log,
    foldAt: mostLinks,
    readers: [...rises].map(([counter, { seconds }]) => [counter, (tick) => seconds.push(tick / TICKS_PER_SECOND)]),
  });
  const secondsAfter = (turnsAfter * slowestTurn(plan)) / TICKS_PER_SECOND;
  const end = Math.round((until + secondsAfter) * TICKS_PER_SECOND);
  const events = eventsUntil(end, { plan, simulation, log });
  return { plan, secondsAfter, events, links: () => linksOf(simulation), rises };
}

/** Shots, parts and rejects: each of these counters always rises by the same amount. */
function countersOf({ processes }: CellPlan): readonly (readonly [string, number])[] {
  const counts = processes.flatMap(({ steps }) => steps.flatMap((step) => Object.entries(step.counts ?? {})));
  return counts.filter(([counter]) => counter !== purgedCounter);
}

function linksOf({ chain }: Simulation): readonly RunLink[] {
  return Array.from({ length: chain.last + 1 }, (_, node) => ({
    activity: chain.activityOf(node),
    seconds: chain.startOf(node) / TICKS_PER_SECOND,
    before: chain.parentOf(node),
    isTied: chain.isTied(node),
  }));
}
