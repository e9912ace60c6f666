// The events of one replication of a plan, up to a time.
import { EventLog } from "#engine/run/eventLog.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import { eventsUntil, type EventRecord } from "./eventRecord.ts";

export function plannedEvents(plan: CellPlan, replication: number, seconds: number): Generator<EventRecord> {
  const log = new EventLog();
  const { seed } = plan.scenario.run;
  const simulation = new Simulation(plan.program, { seed, replication, isActive: plan.isActive, log });
  return eventsUntil(Math.round(seconds * TICKS_PER_SECOND), { plan, simulation, log });
}
