// Holds the recursions of accumulator and continuous extrusion to the rules of the model, at drawn times.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { accumulatorRecursion, type AccumulatorCell } from "../../support/recursions/accumulatorRecursion.ts";
import { continuousRecursion } from "../../support/recursions/continuousRecursion.ts";
import { accumulatorOf, continuousOf, letters, starts, sum } from "../../support/equalStations.ts";
import type { Durations, StepInterval } from "../../support/recursions/shotRecursion.ts";

const randomCells = fc.record({
  stations: fc.integer({ min: 1, max: letters.length }),
  start: starts,
  grid: fc.constantFrom(1, 1_000_000),
  numbers: fc.infiniteStream(fc.integer({ min: 0, max: 12 })),
});

/** A new duration for each occurrence of a step, in whole multiples of `grid` ticks. */
function drawn(numbers: Iterator<number>, grid: number): Durations {
  const known = new Map<string, number>();
  return (resource, step, n, station) => {
    const key = `${resource}|${step}|${n}|${station}`;
    // Every recharge takes more ticks than any drop, so that the plasticating rate stays below the delivery rate.
    if (!known.has(key)) known.set(key, ((numbers.next().value as number) + (step === "recharge" ? 13 : 1)) * grid);
    return known.get(key)!;
  };
}

function expectOneAfterAnother(steps: readonly StepInterval[]): void {
  const ends = new Map<string, number>();
  for (const { resource, start, end } of steps) {
    expect(start).toBeGreaterThanOrEqual(ends.get(resource) ?? 0);
    ends.set(resource, end);
  }
}

/** The melt in the common chamber at a tick, from the steps alone: recharged less delivered melt. */
function levelAt(steps: readonly StepInterval[], cell: AccumulatorCell & { capacity: number }, tick: number): number {
  const shotOf = (station: string) => cell.stations.find(({ name }) => name === station)?.shot ?? cell.capacity;
  const done = ({ start, end }: StepInterval) => Math.min(1, Math.max(0, (tick - start) / (end - start)));
  const moved = steps.map((each) => {
    const sign = each.step === "recharge" ? 1 : each.step === "drop" ? -1 : 0;
    return sign === 0 ? 0 : sign * done(each) * shotOf(each.station);
  });
  return sum(moved) + (cell.start === "running" ? cell.capacity : 0);
}

describe("different stations with drawn times", () => {
  test("never fill a head that delivers, and fill the heads in the order of their drops", () => {
    fc.assert(
      fc.property(randomCells, ({ stations, start, grid, numbers }) => {
        const steps = accumulatorRecursion(accumulatorOf(stations, start), drawn(numbers, grid), 300 * grid);
        expectOneAfterAnother(steps);
        const atChamber = steps.filter(({ step }) => step === "drop" || step === "recharge");
        expectOneAfterAnother(atChamber.map((each) => ({ ...each, resource: each.station })));
        const served = (step: string) => steps.filter((each) => each.step === step).map(({ station }) => station);
        const fills = served("recharge").slice(start === "cold" ? stations : 0);
        const drops = served("drop");
        expect(fills).toEqual(drops.slice(0, fills.length));
      }),
      { seed: 7 },
    );
  });

  test("never overfill or empty a common chamber, and begin a shift at the tick that meets its last need", () => {
    fc.assert(
      fc.property(
        randomCells,
        fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 5, maxLength: 5 }),
        (own, masses) => {
          const shots = masses.slice(0, own.stations);
          const largest = Math.max(...shots);
          // A cold start rounds the rest of its first charge to a tick, which `levelAt` does not know. A rest of one shot needs no rounding.
          const spare = own.start === "cold" ? largest : masses[4]!;
          const base = accumulatorOf(own.stations, own.start, { shot: 1, capacity: largest + spare });
          const each = base.stations.map((station, k) => ({ ...station, shot: shots[k]! }));
          const cell = { ...base, stations: each } as AccumulatorCell & { capacity: number };
          const all = accumulatorRecursion(cell, drawn(own.numbers, own.grid), 300 * own.grid);
          expectOneAfterAnother(all);
          for (const { step, start, end } of all) {
            if (start > 200 * own.grid) continue; // the run cuts off steps that begin near its end
            for (const level of [start, end].map((tick) => levelAt(all, cell, tick))) {
              expect(level).toBeGreaterThan(-1e-6);
              expect(level).toBeLessThan(cell.capacity + 1e-6);
            }
            if (step !== "shift to port") continue;
            expect(levelAt(all, cell, start)).toBeGreaterThan(largest - 1e-6);
            const otherNeedMetNow =
              start === 0 || all.some((other) => other.end === start && other.resource !== "plasticator");
            if (!otherNeedMetNow) expect(levelAt(all, cell, start - 1)).toBeLessThan(largest);
          }
        },
      ),
      { seed: 8 },
    );
  });

  test("continuous: cut no short parison, hold one mold at the die, and never stop the screw", () => {
    fc.assert(
      fc.property(randomCells, ({ stations, start, grid, numbers }) => {
        const cell = continuousOf(stations, start, "end of cut");
        const steps = continuousRecursion(cell, drawn(numbers, grid), 300 * grid);
        expectOneAfterAnother(steps);
        const atDie = steps.filter(({ step }) => ["travel in", "close", "cut", "travel out"].includes(step));
        expectOneAfterAnother(atDie.map((each) => ({ ...each, resource: "die" })));
        const screw = steps.filter(({ resource }) => resource === "plasticator");
        expect(screw.slice(1).map((each) => each.start)).toEqual(screw.slice(0, -1).map((each) => each.end));
        const cuts = steps.filter(({ step }) => step === "cut").map(({ end }) => end);
        const full = screw.filter(({ step }) => step === "parison").map(({ end }) => end);
        if (start === "running") full.unshift(0);
        for (const [n, cut] of cuts.entries()) expect(cut).toBeGreaterThanOrEqual(full[n]!);
      }),
      { seed: 9 },
    );
  });
});
