// The end of the warm-up by MSER-5, and the series for which it is refused.
import fc from "fast-check";
import alea from "seedrandom/lib/alea.js";
import { expect, test } from "vitest";
import { averagedSeries, warmUp } from "#analysis/statistics/warmUp.ts";

const series = (length: number, value: (index: number) => number) => Array.from({ length }, (_, i) => value(i + 1));
const meanAfter = (values: readonly number[], cut: number) =>
  values.slice(cut).reduce((sum, value) => sum + value, 0) / (values.length - cut);

test("a warm-up that decays under an oscillation is cut after 6 batches", () => {
  // MSER-5 of White, An effective truncation heuristic for bias reduction in simulation output, Simulation 69 (1997) 323 [M],
  // computed independently [C]: y = 10 − 8 e^(−i/10) + sin i, i = 1..200 gives d = 6 and a mean of 9.976268 after the cut.
  const values = series(200, (i) => 10 - 8 * Math.exp(-i / 10) + Math.sin(i));
  expect(warmUp(values)).toEqual({ kind: "cut", batches: 6, observations: 30 });
  expect(meanAfter(values, 30)).toBeCloseTo(9.976268, 6);
});

test("a constant series of any value is not cut", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), fc.integer({ min: 5, max: 400 }), (value, length) => {
      expect(warmUp(series(length, () => value))).toEqual({ kind: "cut", batches: 0, observations: 0 });
    }),
  );
});

test("a warm-up before a constant series is cut at its last batch", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 100, noNaN: true }),
      fc.integer({ min: 1, max: 40 }),
      (level, warmUpLength) => {
        const values = series(200, (i) => (i <= warmUpLength ? level * (2 + i / 100) : level));
        expect(warmUp(values)).toMatchObject({ kind: "cut", batches: Math.ceil(warmUpLength / 5) });
      },
    ),
  );
});

test("a pure trend is refused, up or down", () => {
  expect(warmUp(series(200, (i) => i))).toEqual({ kind: "refused", reason: "trend" });
  expect(warmUp(series(200, (i) => 1000 - 3 * i))).toEqual({ kind: "refused", reason: "trend" });
});

test("a warm-up of more than half of the run is refused", () => {
  expect(warmUp(series(200, (i) => (i <= 120 ? 50 : 10 + Math.sin(i))))).toEqual({ kind: "refused", reason: "trend" });
});

test("a short series that varies is refused", () => {
  expect(warmUp(series(49, (i) => Math.sin(i)))).toEqual({ kind: "refused", reason: "short" });
  expect(warmUp([])).toEqual({ kind: "refused", reason: "short" });
});

test("noise without warm-up is rarely refused, and rarely cut by more than a quarter", () => {
  const draw = alea("noise without start-up");
  const outcomes = Array.from({ length: 200 }, () => warmUp(series(1000, () => 10 + draw())));
  const refused = outcomes.filter(({ kind }) => kind === "refused").length;
  const longCuts = outcomes.filter((outcome) => outcome.kind === "cut" && outcome.observations > 250).length;
  expect(refused).toBeLessThanOrEqual(10);
  expect(longCuts).toBeLessThanOrEqual(20);
});

test("the cut does not depend on the unit or the level of the series", () => {
  const draw = alea("unit and level");
  const values = series(300, (i) => 20 * Math.exp(-i / 15) + draw());
  const scaled = values.map((value) => 5000 + 60 * value);
  expect(warmUp(scaled)).toEqual(warmUp(values));
  expect(warmUp(values)).toMatchObject({ kind: "cut" });
});

test("replications are averaged observation by observation, up to the length of the shortest", () => {
  expect(
    averagedSeries([
      [1, 2, 3],
      [3, 6],
    ]),
  ).toEqual([2, 4]);
});
