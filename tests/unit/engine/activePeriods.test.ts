// Holds longest active periods to their published definition, and to a search of every instant.
import fc from "fast-check";
import { expect, test } from "vitest";
import { compileTable } from "#engine/compiler/program.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { StepTable } from "#engine/compiler/stepTable.ts";
import { ticks } from "../../support/runTable.ts";

/** Resource, tick, and true if work begins or false if it pauses. */
type Change = readonly [number, number, boolean];

/** Resources that begin and pause work at the given ticks. */
function simulationOf(resources: number, changes: readonly Change[]): Simulation {
  const names = Array.from({ length: resources }, (_, resource) => `r${resource}`);
  const table: StepTable = {
    resources: names.map((name) => ({
      name,
      states: [
        { name: "pausing", kind: "waiting" },
        { name: "working", kind: "working" },
      ],
    })),
    places: [],
    processes: names.map((name, resource) => {
      const own = changes.filter((change) => change[0] === resource).toSorted((a, b) => a[1] - b[1]);
      const all: readonly Change[] = [[resource, 0, false], ...own];
      return {
        name,
        resource: name,
        steps: all.map(([, tick, works], i) => ({
          name: `${i}`,
          shows: [{ resource: name, state: works ? "working" : "pausing" }],
          time: ticks((all[i + 1]?.[1] ?? 1e6) - tick),
        })),
      };
    }),
  };
  return new Simulation(compileTable(table), { seed: "periods", replication: 0 });
}

function longest(simulation: Simulation, until: number): ReturnType<Simulation["longestActive"]> {
  simulation.runUntil(until);
  return simulation.longestActive();
}

const changesOf = (resource: number, spans: readonly (readonly [number, number])[]): Change[] =>
  spans.flatMap(([start, end]) => [[resource, start, true] as const, [resource, end, false] as const]);

// Definition of sole and shifting bottleneck: Roser, Nakano and Tanaka, Shifting bottleneck detection, Winter Simulation
// Conference 2002 [M]. By hand [C]: M1 active [0,10] [12,20], M2 [0,4] [5,25] → M1 alone 0-5, shifting 5-10, M2 alone 10-25.
test("finds the sole bottleneck and the time in which it shifts", () => {
  const periods = simulationOf(2, [
    ...changesOf(0, [
      [0, 10],
      [12, 20],
    ]),
    ...changesOf(1, [
      [0, 4],
      [5, 25],
    ]),
  ]);
  expect(longest(periods, 25)).toEqual([
    { sole: 5, shifting: 2.5 },
    { sole: 15, shifting: 2.5 },
  ]);
});

test("a pause of zero duration does not end an active period", () => {
  const periods = simulationOf(2, [
    ...changesOf(0, [
      [0, 6],
      [6, 12],
    ]),
    ...changesOf(1, [[1, 11]]),
  ]);
  expect(longest(periods, 12)).toEqual([
    { sole: 12, shifting: 0 },
    { sole: 0, shifting: 0 },
  ]);
});

test("time before a restart of the observation does not count", () => {
  const periods = simulationOf(2, changesOf(0, [[0, 9]]).concat([[1, 4, true]]));
  periods.runUntil(10);
  periods.restartObservation();
  expect(longest(periods, 16)).toEqual([
    { sole: 0, shifting: 0 },
    { sole: 6, shifting: 0 },
  ]);
});

test("the times of all resources add up to the time in which at least one of them works", () => {
  const spans = fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 })), { maxLength: 8 });
  fc.assert(
    fc.property(fc.array(spans, { minLength: 1, maxLength: 4 }), (all) => {
      const worked = new Set<number>();
      const changes = all.flatMap((gaps, resource) => {
        let tick = 0;
        return gaps.flatMap(([pause, work]) => {
          const start = tick + pause;
          tick = start + work;
          for (let t = start; t < tick; t++) worked.add(t);
          return changesOf(resource, [[start, tick]]);
        });
      });
      const sum = longest(simulationOf(all.length, changes), 1000).reduce(
        (total, { sole, shifting }) => total + sole + shifting,
        0,
      );
      expect(sum).toBe(worked.size);
    }),
    { seed: 4 },
  );
});
