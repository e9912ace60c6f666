// Returns the times that the loop draws, from a process that only passes the times of its steps.
import { compileTable } from "#engine/compiler/program.ts";
import type { StepSpec } from "#engine/compiler/stepTable.ts";
import { Simulation } from "#engine/run/simulation.ts";

/** The resource of the process, whose steps name the streams. */
export const drawer = "drawer";

/** Ticks between the ends of the first `count` steps that count "drawn". `meanTicks` is roughly the mean of a step. */
export function drawnTimes(
  steps: readonly StepSpec[],
  { seed, count, meanTicks }: { readonly seed: string; readonly count: number; readonly meanTicks: number },
): Float64Array {
  const program = compileTable({
    resources: [{ name: drawer, states: [{ name: "draw", kind: "working" }] }],
    places: [],
    processes: [{ name: drawer, resource: drawer, steps: steps.map((step) => ({ counts: { drawn: 1 }, ...step })) }],
  });
  const times = new Float64Array(count);
  let drawn = 0;
  let before = 0;
  const reader = (tick: number): void => {
    if (drawn < count) times[drawn++] = tick - before;
    before = tick;
  };
  const simulation = new Simulation(program, { seed, replication: 0, readers: [["drawn", reader]] });
  const stretch = Math.ceil((meanTicks * count) / 8);
  while (simulation.counts[0]! < count) simulation.runUntil(simulation.now + stretch);
  return times;
}
