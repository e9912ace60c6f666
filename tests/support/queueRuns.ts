// Runs replications of a queue's step table and gives the figures of queueing theory.
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { compileTable } from "#engine/compiler/program.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { StepTable } from "#engine/compiler/stepTable.ts";
import { exponential, openQueue } from "./queueTables.ts";

/** One replication, after its warm-up. */
export interface QueueRun {
  /** Mean number of resources in a state. */
  readonly meanIn: (state: string) => number;
  /** Increments of a counter per second. */
  readonly rate: (counter: string) => number;
  /** Seconds at which a counter rose. */
  readonly times: (counter: string) => readonly number[];
  readonly from: number;
  readonly until: number;
}

const ticks = 1e6;

export function runQueue(table: StepTable, replications: number, from: number, until: number): readonly QueueRun[] {
  const program = compileTable(table);
  return Array.from({ length: replications }, (_, replication) => {
    const simulation = new Simulation(program, { seed: "queues", replication }, program.counters);
    simulation.runUntil(from * ticks);
    simulation.restartObservation();
    simulation.runUntil(until * ticks);
    simulation.settle();
    const number = (counter: string): number => program.counters.indexOf(counter);
    const { marks, counts, stateTicks } = simulation;
    return {
      meanIn: (state) =>
        program.states.reduce((sum, each, i) => sum + (each.name === state ? stateTicks[i]! : 0), 0) /
        ((until - from) * ticks),
      rate: (counter) => counts[number(counter)]! / (until - from),
      times: (counter) =>
        marks.ticks.filter((_tick, at) => marks.counters[at] === number(counter)).map((tick) => tick / ticks),
      from,
      until,
    };
  });
}

/** The 99 % interval of a figure over the replications. */
export function over(runs: readonly QueueRun[], figure: (run: QueueRun) => number): Interval {
  return meanInterval(runs.map(figure), 0.99);
}

interface NumberInSystem {
  /** Mean number of customers in the system, and the share of time with at least `busy` of them. */
  readonly mean: number;
  readonly shareAbove: number;
}

/** The number in an open queue that starts empty at 0; arrivals and departures are those of the whole run. */
function numberInSystem(
  arrivals: readonly number[],
  departures: readonly number[],
  busy: number,
  until: number,
): NumberInSystem {
  let [here, since, area, above, a, d] = [0, 0, 0, 0, 0, 0];
  while (a < arrivals.length || d < departures.length) {
    const isArrival = (arrivals[a] ?? Infinity) <= (departures[d] ?? Infinity);
    const now = isArrival ? arrivals[a++]! : departures[d++]!;
    area += here * (now - since);
    above += here >= busy ? now - since : 0;
    here += isArrival ? 1 : -1;
    since = now;
  }
  area += here * (until - since);
  above += here >= busy ? until - since : 0;
  return { mean: area / until, shareAbove: above / until };
}

export interface OpenRun {
  readonly run: QueueRun;
  readonly system: NumberInSystem;
}

/** Runs of an open queue that start empty and are long enough to make the start negligible. */
export function openRuns(arrival: number, service: Distribution, servers: number, length: number): readonly OpenRun[] {
  return runQueue(openQueue(exponential(arrival), service, servers), 40, 0, length).map((run) => ({
    run,
    system: numberInSystem(run.times("arrivals"), run.times("served"), servers, length),
  }));
}

/** Mean number in line: the number in the system less the number in service. */
export const waiting = ({ run, system }: OpenRun): number => system.mean - run.meanIn("busy");
