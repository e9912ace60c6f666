// Where the start-up of a series ends, and when no answer is given.
import fc from "fast-check";
import alea from "seedrandom/lib/alea.js";
import { expect, test } from "vitest";
import { averagedSeries, warmUp } from "#analysis/statistics/warmUp.ts";

const series = (length: number, value: (index: number) => number) => Array.from({ length }, (_, i) => value(i + 1));
const meanAfter = (values: readonly number[], cut: number) =>
  values.slice(cut).reduce((sum, value) => sum + value, 0) / (values.length - cut);

test("a start-up that dies away under an oscillation is cut after 6 batches", () => {
  // y = 10 − 8 e^(−i/10) + sin i, i = 1..200: d = 6, mean after 9.976268 [C]
  const values = series(200, (i) => 10 - 8 * Math.exp(-i / 10) + Math.sin(i));
  expect(warmUp(values)).toEqual({ kind: "cut", batches: 6, observations: 30 });
  expect(meanAfter(values, 30)).toBeCloseTo(9.976268, 6);
});

test("a constant series is cut nowhere, whatever its digits", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), fc.integer({ min: 5, max: 400 }), (value, length) => {
      expect(warmUp(series(length, () => value))).toEqual({ kind: "cut", batches: 0, observations: 0 });
    }),
  );
});

test("a start-up before a constant series is cut to the batch", () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 100, noNaN: true }), fc.integer({ min: 1, max: 40 }), (level, startUp) => {
      const values = series(200, (i) => (i <= startUp ? level * (2 + i / 100) : level));
      expect(warmUp(values)).toMatchObject({ kind: "cut", batches: Math.ceil(startUp / 5) });
    }),
  );
});

test("a pure trend is refused, up or down", () => {
  expect(warmUp(series(200, (i) => i))).toEqual({ kind: "refused", reason: "trend" });
  expect(warmUp(series(200, (i) => 1000 - 3 * i))).toEqual({ kind: "refused", reason: "trend" });
});

test("a start-up of more than half of the run is refused", () => {
  expect(warmUp(series(200, (i) => (i <= 120 ? 50 : 10 + Math.sin(i))))).toEqual({ kind: "refused", reason: "trend" });
});

test("a short series that varies is refused", () => {
  expect(warmUp(series(49, (i) => Math.sin(i)))).toEqual({ kind: "refused", reason: "short" });
  expect(warmUp([])).toEqual({ kind: "refused", reason: "short" });
});

test("noise without start-up loses little, and is hardly ever refused", () => {
  const draw = alea("noise without start-up");
  const outcomes = Array.from({ length: 200 }, () => warmUp(series(1000, () => 10 + draw())));
  const refused = outcomes.filter(({ kind }) => kind === "refused").length;
  const heavy = outcomes.filter((outcome) => outcome.kind === "cut" && outcome.observations > 250).length;
  expect(refused).toBeLessThanOrEqual(10);
  expect(heavy).toBeLessThanOrEqual(20);
});

test("the cut does not depend on the unit or the level of the series", () => {
  const draw = alea("unit and level");
  const values = series(300, (i) => 20 * Math.exp(-i / 15) + draw());
  const scaled = values.map((value) => 5000 + 60 * value);
  expect(warmUp(scaled)).toEqual(warmUp(values));
  expect(warmUp(values)).toMatchObject({ kind: "cut" });
});

test("replications are averaged observation by observation, as far as the shortest goes", () => {
  expect(
    averagedSeries([
      [1, 2, 3],
      [3, 6],
    ]),
  ).toEqual([2, 4]);
});
