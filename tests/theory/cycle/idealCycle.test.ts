// Holds the ideal cycle to the closed forms of its circuits, and to the simulation at fixed times.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { caseCount } from "../../support/caseCount.ts";
import { allShotTicks, fixedCell, type FixedStation } from "../../support/fixedCell.ts";

/** Whole hundredths of a second, in seconds, so that ties and exact sums are common. */
const hundredths = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: least, max: most }).map((n) => n / 100);

const times = fc.record({
  recharge: hundredths(50, 600),
  drop: hundredths(50, 300),
  close: hundredths(20, 150),
  cool: hundredths(200, 1500),
  remove: hundredths(20, 300),
});

const ticks = (seconds: number): number => Math.round(seconds * 1e6);

/**
 * Ticks of one turn of equal stations: circuits of the timed event graph, verified against 20,000 runs of an independent
 * event-queue program [C].
 */
function closedForm(t: FixedStation, shift: number, count: number, starts: string, operators: number): number {
  const [v, d, c, r] = [shift, t.drop, t.close, t.recharge].map(ticks) as [number, number, number, number];
  const m = ticks(t.close) + ticks(t.cool) + ticks(t.remove);
  const screw = starts === "valve-neutral" ? r + d + 2 * v : v + d + Math.max(v, c) + r;
  const crew = t.by === "operator" ? (ticks(t.remove) * count) / Math.min(operators, count) : 0;
  return Math.max(screw * count, v + d + m, crew);
}

describe("the schedule of the ideal cycle", () => {
  test("has every step for its time, the turns one period apart, and as slack what the circuit of the stations lacks", () => {
    const cases = fc.tuple(times, hundredths(0, 60), fc.integer({ min: 1, max: 6 }));
    fc.assert(
      fc.property(cases, ([t, shift, count]) => {
        const stations = Array.from({ length: count }, () => ({ ...t, by: "machine" as const }));
        const ideal = idealCycle(
          fixedCell({ stations, shift, rechargeStarts: "valve-neutral", dispatch: "alternate" }),
        );
        // As in the closed form: the screw has a circuit for each shot, and each station one for each of its turns.
        const screw = t.recharge + t.drop + 2 * shift;
        const own = shift + t.drop + t.close + t.cool + t.remove;
        const turn = Math.max(count * screw, own);
        expect(ideal.slackOf("station 01", "cool")).toBeCloseTo(turn - own, 6);
        expect(ideal.slackOf("plasticator", "recharge")).toBeCloseTo(turn / count - screw, 6);
        const of = (step: string) => ideal.schedule.filter((row) => row.step === step);
        for (const step of ["recharge", "drop", "close", "cool", "remove"] as const)
          expect(of(step).map(({ start, end }) => end - start)).toEqual(
            stations.map(() => expect.closeTo(t[step], 6) as number),
          );
        const starts = of("drop").map(({ start }) => start);
        for (const [k, start] of starts.entries()) expect(start - starts[0]!).toBeCloseTo((k * turn) / count, 6);
      }),
    );
  });
});

describe("ideal cycle of equal stations", () => {
  test("has the closed form's period in ticks for every rule, recharge, number of stations and crew", () => {
    fc.assert(
      fc.property(
        times,
        hundredths(0, 60),
        fc.integer({ min: 1, max: 8 }),
        fc.constantFrom("valve-neutral" as const, "mold-closed" as const),
        fc.constantFrom("first-ready" as const, "longest-since-drop" as const, "alternate" as const),
        fc.integer({ min: 0, max: 3 }),
        fc.constantFrom("running" as const, "cold" as const),
        (t, shift, count, rechargeStarts, dispatch, operators, start) => {
          const one: FixedStation = { ...t, by: operators > 0 ? "operator" : "machine" };
          const cell = fixedCell({
            stations: Array.from({ length: count }, () => one),
            shift,
            rechargeStarts,
            dispatch,
            operators,
            start,
          });
          const ideal = idealCycle(cell);
          expect(ideal.method).toBe("fixed order");
          const expected = closedForm(one, shift, count, rechargeStarts, operators);
          expect(ideal.periodTicks * count).toBeCloseTo(expected * ideal.shotsPerPeriod, 6);
        },
      ),
      { seed: 1 },
    );
  });

  // The cell as a timed event graph: seconds per shot for M = 1..4, computed independently of this project [C].
  test.each([
    ["valve-neutral", 0.25, [13.05, 6.525, 6.3, 6.3]],
    ["mold-closed", 0.25, [13.05, 6.65, 6.65, 6.65]],
    ["valve-neutral", 0.5, [13.3, 6.8, 6.8, 6.8]],
  ] as const)(
    "has the independently computed seconds per shot: %s, valve shift %s s",
    (rechargeStarts, shift, expected) => {
      const one = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.6, remove: 0.8 };
      expected.forEach((seconds, i) => {
        const ideal = idealCycle(
          fixedCell({ stations: Array.from({ length: i + 1 }, () => one), shift, rechargeStarts }),
        );
        expect(ideal.secondsPerShot).toBeCloseTo(seconds, 9);
      });
    },
  );
});

describe("ideal cycle of different stations", () => {
  const stations = fc.array(times, { minLength: 2, maxLength: 5 });

  test("has the closed form's period in ticks under alternate", () => {
    fc.assert(
      fc.property(
        stations,
        hundredths(0, 60),
        fc.constantFrom("valve-neutral" as const, "mold-closed" as const),
        (all, shift, rechargeStarts) => {
          const v = ticks(shift);
          const screw = all.map(
            (s) =>
              v +
              ticks(s.drop) +
              (rechargeStarts === "valve-neutral" ? v : Math.max(v, ticks(s.close))) +
              ticks(s.recharge),
          );
          const turn = all.map((s) => v + ticks(s.drop) + ticks(s.close) + ticks(s.cool) + ticks(s.remove));
          const expected = Math.max(
            screw.reduce((sum, each) => sum + each, 0),
            ...turn,
          );
          const ideal = idealCycle(fixedCell({ stations: all, shift, rechargeStarts, dispatch: "alternate" }));
          expect(ideal.method).toBe("fixed order");
          expect(ideal.periodTicks * all.length).toBe(expected * ideal.shotsPerPeriod);
        },
      ),
      { seed: 2 },
    );
  });

  test("has exactly the simulation's period in an order found by running", () => {
    let found = 0;
    fc.assert(
      fc.property(
        stations,
        hundredths(0, 60),
        fc.constantFrom("first-ready" as const, "longest-since-drop" as const, "priority" as const),
        fc.integer({ min: 0, max: 2 }),
        (all, shift, dispatch, operators) => {
          const cell = fixedCell({
            stations: all.map((s, i) => ({
              ...s,
              by: operators > 0 && i % 2 === 0 ? ("operator" as const) : ("machine" as const),
              priority: i,
            })),
            shift,
            dispatch,
            operators,
          });
          const ideal = idealCycle(cell);
          if (ideal.method === "bound") return;
          found++;
          const long: Scenario = { ...cell, run: { ...cell.run, length: 3e4 } };
          const shots = allShotTicks(runCell(planCell(long), { replication: 1 }));
          const step = ideal.shotsPerPeriod;
          const last = shots.length - 1;
          for (let k = 1; k <= 3; k++) expect(shots[last]! - shots[last - k * step]!).toBe(k * ideal.periodTicks);
        },
      ),
      { seed: 3 },
    );
    expect(found).toBeGreaterThan(caseCount / 2);
  });
});
