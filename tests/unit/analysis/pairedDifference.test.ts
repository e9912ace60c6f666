// Holds paired differences to independently computed values.
import { expect, test } from "vitest";
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";

const first = [52.1, 49.8, 51.3, 50.7, 52.9, 48.8, 51.9, 50.2, 49.5, 51.6];
const second = [50.9, 48.9, 50.1, 49.6, 51.4, 47.9, 50.8, 49.1, 48.7, 50.2];

test("the difference of two scenarios has the computed mean, 95 % half-width and correlation", () => {
  // Computed with SciPy [C]. The unpaired half-width of the same data is 1.139.
  const difference = pairedDifference(first, second);
  expect(difference.mean).toBeCloseTo(1.12, 10);
  expect(difference.halfWidth).toBeCloseTo(0.15745, 5);
  expect(difference.correlation).toBeCloseTo(0.9951704245912748, 10);
});

test("four simultaneous comparisons have the wider interval of Bonferroni", () => {
  // t(1 − .05/8, 9) × sd/√10 with SciPy [C].
  const difference = pairedDifference(first, second, { comparisons: 4 });
  expect(difference.simultaneousHalfWidth).toBeCloseTo(0.21652742055491495, 10);
  expect(difference.halfWidth).toBeCloseTo(0.15745, 5);
});

test("a single comparison has equal individual and simultaneous intervals", () => {
  const difference = pairedDifference(first, second);
  expect(difference.simultaneousHalfWidth).toBe(difference.halfWidth);
});

test("the difference changes its sign with the order, and keeps its half-width", () => {
  const forward = pairedDifference(first, second);
  const reverse = pairedDifference(second, first);
  expect(reverse.mean).toBeCloseTo(-forward.mean, 12);
  expect(reverse.halfWidth).toBeCloseTo(forward.halfWidth ?? NaN, 12);
});

test("one pair has no interval, and a side that does not vary has no correlation", () => {
  expect(pairedDifference([3], [1])).toMatchObject({ mean: 2, sd: null, halfWidth: null, simultaneousHalfWidth: null });
  expect(pairedDifference([3, 3, 3], [1, 2, 3]).correlation).toBeNull();
});

test("two roundings of one number have no difference, and one part in a million is a difference", () => {
  const tenths = first.map((value) => value / 10);
  expect(
    pairedDifference(
      first,
      tenths.map((value) => value * 10),
    ),
  ).toMatchObject({ mean: 0, halfWidth: 0 });
  expect(pairedDifference([0.3, 0.6], [0.1 + 0.2, 0.2 + 0.4])).toMatchObject({ mean: 0, halfWidth: 0 });
  expect(
    pairedDifference(
      first.map((value) => value * 1.000001),
      first,
    ).mean,
  ).toBeGreaterThan(0);
});

test("sides of unequal length violate an invariant", () => {
  expect(() => pairedDifference([1, 2], [1])).toThrow("same replications");
});
