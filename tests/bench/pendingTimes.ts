// Measures the event list in a separate process, and prints nanoseconds an event.
import { compileTable } from "#engine/compiler/program.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { StepTable } from "#engine/compiler/stepTable.ts";
import { median } from "./median.ts";

const events = 1_000_000;
const passes = 7;

/** The hold model: the earliest event is removed and scheduled again after a drawn time (Vaucher and Duval, 1975 [M]). */
function holdTable(entities: number): StepTable {
  const names = Array.from({ length: entities }, (_, i) => `entity ${i}`);
  const time = { distributions: [{ distribution: { kind: "uniform", min: 0, max: 2 } }] } as const;
  return {
    resources: names.map((name) => ({ name, states: [{ name: "pending", kind: "waiting" }] })),
    places: [],
    // The counter prevents steps ahead of the clock.
    processes: names.map((name) => ({ name, resource: name, steps: [{ name: "hold", time, counts: { events: 1 } }] })),
  };
}

const [kind, entities] = [process.argv[2], Number(process.argv[3])];
const program = compileTable(holdTable(entities));
const until = Math.round((events / entities) * 1e6);
const taken = Array.from({ length: passes }, () => {
  const options = { seed: "bench", replication: 0, scanUpTo: kind === "scan" ? entities : 0 };
  const simulation = new Simulation(program, options);
  const before = process.cpuUsage();
  simulation.runUntil(until);
  const { user, system } = process.cpuUsage(before);
  return ((user + system) * 1000) / simulation.counts[0]!;
});
process.stdout.write(String(median(taken)));
