// Active periods against the published example and against a plain search of every instant.
import fc from "fast-check";
import { expect, test } from "vitest";
import { ActivePeriods } from "#engine/activePeriods.ts";

/** Resource, tick, and whether it begins or pauses. */
type Change = readonly [number, number, boolean];

function told(resources: number, changes: readonly Change[]): ActivePeriods {
  const clock = new Float64Array(1);
  const periods = new ActivePeriods(resources, clock);
  for (const [resource, tick, begins] of changes.toSorted((a, b) => a[1] - b[1])) {
    clock[0] = tick;
    if (begins) periods.begin(resource);
    else periods.pause(resource);
  }
  return periods;
}

const changesOf = (resource: number, spans: readonly (readonly [number, number])[]): Change[] =>
  spans.flatMap(([start, end]) => [[resource, start, true] as const, [resource, end, false] as const]);

// Roser, Nakano and Tanaka, Winter Simulation Conference 2001/2002 (as given in the project's check values):
// M1 active [0,10] [12,20], M2 [0,4] [5,25] → M1 alone 0-5, shifting 5-10, M2 alone 10-25.
test("names the sole bottleneck and the time in which it shifts", () => {
  const periods = told(2, [
    ...changesOf(0, [
      [0, 10],
      [12, 20],
    ]),
    ...changesOf(1, [
      [0, 4],
      [5, 25],
    ]),
  ]);
  expect(periods.longest(25)).toEqual([
    { sole: 5, shifting: 2.5 },
    { sole: 15, shifting: 2.5 },
  ]);
});

test("a pause of no length does not end a period", () => {
  const periods = told(2, [
    ...changesOf(0, [
      [0, 6],
      [6, 12],
    ]),
    ...changesOf(1, [[1, 11]]),
  ]);
  expect(periods.longest(12)).toEqual([
    { sole: 12, shifting: 0 },
    { sole: 0, shifting: 0 },
  ]);
});

test("what was before a restart does not count", () => {
  const periods = told(2, changesOf(0, [[0, 9]]).concat([[1, 4, true]]));
  periods.restart(10);
  expect(periods.longest(16)).toEqual([
    { sole: 0, shifting: 0 },
    { sole: 6, shifting: 0 },
  ]);
});

test("every instant at which somebody works belongs to someone, and nobody gets more than was worked", () => {
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
      const sum = told(all.length, changes)
        .longest(1000)
        .reduce((total, { sole, shifting }) => total + sole + shifting, 0);
      expect(sum).toBe(worked.size);
    }),
    { numRuns: 500, seed: 4 },
  );
});
