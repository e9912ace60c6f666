// Holds the event list to a sort of all events, as a linear scan and as a heap.
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { EventLog } from "#engine/run/eventLog.ts";
import { compileTable } from "#engine/compiler/program.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { StepTable } from "#engine/compiler/stepTable.ts";
import { ticks } from "../../support/runTable.ts";

/** Each process repeats its times; every step has its own state, so that the log contains its start. */
function passing(times: readonly (readonly number[])[]): StepTable {
  const names = times.map((_, process) => `p${process}`);
  const statesOf = (own: readonly number[]): readonly string[] => own.map((_, i) => `s${i}`);
  return {
    resources: times.map((own, p) => ({
      name: names[p]!,
      states: statesOf(own).map((name) => ({ name, kind: "working" })),
    })),
    places: [],
    processes: times.map((own, p) => ({
      name: names[p]!,
      resource: names[p]!,
      steps: own.map((time, i) => ({
        name: `s${i}`,
        shows: [{ resource: names[p]!, state: `s${i}` }],
        time: ticks(time),
      })),
    })),
  };
}

/** Every start up to a tick, sorted by time and then by the order of the processes. */
function sortedStarts(times: readonly (readonly number[])[], until: number): readonly (readonly [number, number])[] {
  const starts = times.flatMap((own, process) => {
    const found: [number, number][] = [];
    for (let tick = 0, i = 0; tick <= until; tick += own[i++ % own.length]!) found.push([tick, process]);
    return found;
  });
  return starts.toSorted(([tick, process], [otherTick, other]) => tick - otherTick || process - other);
}

test.each([
  ["scan", 3, 8],
  ["scan", 9, 100],
  ["heap", 2, 0],
  ["heap", 9, 8],
  ["heap", 40, 8],
])(
  "a %s of %i processes gives the earliest first, and of equal times the process listed first",
  (_, processes, scanUpTo) => {
    // Few different times, so that most ticks have several events.
    const own = fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(own, { minLength: processes, maxLength: processes }), (times) => {
        const log = new EventLog();
        const options = { seed: "list", replication: 0, log, scanUpTo };
        new Simulation(compileTable(passing(times)), options).runUntil(30);
        // The log begins with the first state of each resource.
        const started = Array.from(log).slice(processes);
        expect(started.map(({ time, resource }) => [time, resource])).toEqual(sortedStarts(times, 30));
      }),
      { seed: 20260751 },
    );
  },
);
