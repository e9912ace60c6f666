// Runs a small step table and gives the states, counters and critical paths of its run.
import { EventLog } from "#engine/run/eventLog.ts";
import { compileTable } from "#engine/compiler/program.ts";
import { Simulation, type SimulationOptions } from "#engine/run/simulation.ts";
import type { StepTable, TimeSpec } from "#engine/compiler/stepTable.ts";

export interface TableRun {
  readonly simulation: Simulation;
  /** Changes of state of a resource as "tick state"; states of no duration are left out. */
  readonly statesOf: (resource: string) => readonly string[];
  readonly count: (counter: string) => number;
  /** Ticks at which a counter rose. */
  readonly ticksOf: (counter: string) => readonly number[];
  /** Ticks of each step on the critical path of a process; zeros are left out. */
  readonly chainOf: (process: string) => Readonly<Record<string, number>>;
}

/** A fixed time of `count` ticks. */
export function ticks(count: number, more: Partial<TimeSpec> = {}): TimeSpec {
  return { distributions: [{ distribution: { kind: "fixed", value: count }, factor: 1e-6 }], ...more };
}

export function runTable(table: StepTable, until: number, options: Partial<SimulationOptions> = {}): TableRun {
  const program = compileTable(table);
  const log = new EventLog();
  const simulation = new Simulation(program, { seed: "table", replication: 0, log, ...options }, program.counters);
  simulation.runUntil(until);
  simulation.settle();
  const counterNumber = (counter: string): number => program.counters.indexOf(counter);
  return {
    simulation,
    statesOf: (resource) => {
      const number = table.resources.findIndex((each) => each.name === resource);
      const entered = Array.from(log).filter((event) => event.resource === number);
      const lasting = entered.filter((event, i) => entered[i + 1]?.time !== event.time);
      const changes = lasting.filter((event, i) => lasting[i - 1]?.state !== event.state);
      return changes.map((event) => `${event.time} ${program.states[event.state]!.name}`);
    },
    count: (counter) => simulation.counts[counterNumber(counter)] ?? 0,
    ticksOf: (counter) =>
      simulation.marks.ticks.filter((_, i) => simulation.marks.counters[i] === counterNumber(counter)),
    chainOf: (process) => {
      const [chain] = simulation.chainsOf([table.processes.findIndex((each) => each.name === process)]);
      const held = new Map<string, number>();
      program.activities.forEach(({ resource, step }, i) => {
        const name = `${resource}: ${step}`;
        if (chain!.ticks[i]! > 0) held.set(name, (held.get(name) ?? 0) + chain!.ticks[i]!);
      });
      return Object.fromEntries(held);
    },
  };
}
