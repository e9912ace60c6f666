// The tasks that are compared; each is a function that runs once and returns its number of units.
import { planCell } from "#cell/layers/planCell.ts";
import { EventLog } from "#engine/run/eventLog.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { openStream } from "../support/draws/openStream.ts";
import { runKernel } from "./kernel.ts";
import { openKernelCell, type KernelCell, type ShotTicks } from "./kernelCell.ts";
import { runRecursion } from "./recursion.ts";

export type Work = () => number;

const manyCycles = 100_000;
const manyDraws = 4_000_000;

/** Units are station cycles; those of `draw` are single draws. */
export const works = {
  model: (scenario: Scenario): Work => wholeModel(scenario, () => undefined),
  logged: (scenario: Scenario): Work => wholeModel(scenario, () => new EventLog()),
  kernel: (scenario: Scenario): Work => kernelWork(scenario, runKernel),
  recursion: (scenario: Scenario): Work => kernelWork(scenario, runRecursion),
  sampling,
  draw,
} as const;

export type WorkName = keyof typeof works;

/** The model as in a study: one plan, with states, counts, marks and critical path kept. */
function wholeModel(scenario: Scenario, openLog: () => EventLog | undefined): Work {
  const plan = planCell(scenario);
  return () => {
    const log = openLog();
    const options = { seed: scenario.run.seed, replication: 0, ...(log ? { log } : {}) };
    const simulation = new Simulation(plan.program, options, plan.marked);
    simulation.runUntil(Math.round(scenario.run.length * TICKS_PER_SECOND));
    simulation.settle();
    const cycles = simulation.marks.ticks.length;
    simulation.chainsOf(plan.stationProcess);
    return cycles;
  };
}

function kernelWork(scenario: Scenario, run: (cell: KernelCell) => ShotTicks): Work {
  return () => {
    const [left, right] = run(openKernelCell(scenario, 0));
    return left.length + right.length;
  };
}

/** Only the draws and quantiles of the stations' cycles. */
function sampling(scenario: Scenario): Work {
  const { stations, toPort, toNeutral } = openKernelCell(scenario, 0);
  const steps = stations.flatMap((station) => [toPort, ...station.steps, toNeutral, station.recharge]);
  return () => {
    let sum = 0;
    for (let cycle = 0; cycle < manyCycles; cycle += stations.length) {
      for (let i = 0; i < steps.length; i++) sum += steps[i]!.sampler.ticks(steps[i]!.stream());
    }
    return used(sum) * manyCycles;
  };
}

function draw(): Work {
  const stream = openStream("bench", 0, "bare", "draw");
  return () => {
    let sum = 0;
    for (let i = 0; i < manyDraws; i++) sum += stream();
    return used(sum) * manyDraws;
  };
}

/** Always 1; the use of the sum keeps the compiler from removing the loop. */
function used(sum: number): number {
  return sum >= 0 ? 1 : 0;
}
