// Holds the intervals of quantiles to ranks from the binomial distribution.
import { describe, expect, it, test } from "vitest";
import { quantileInterval } from "#analysis/statistics/quantileInterval.ts";

const ranks = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i + 1);

// Ranks by David and Nagaraja, Order Statistics (2003), section 7.1 [M], computed with the binomial distribution of scipy [C].
describe("the interval of a quantile", () => {
  it.each([
    [10, 0.5, 2, 9],
    [20, 0.5, 6, 15],
    [100, 0.5, 40, 61],
    [100, 0.05, 1, 11],
    [100, 0.95, 90, 100],
    [200, 0.95, 184, 197],
    [500, 0.05, 16, 36],
    [2000, 0.95, 1880, 1920],
    [2000, 0.5, 956, 1045],
  ])("of %i values at p = %d lies between ranks %i and %i", (count, p, low, high) => {
    expect(quantileInterval(ranks(count).toReversed(), p)).toEqual({ low, high });
  });

  it.each([
    [10, 0.05, null, 3],
    [20, 0.05, null, 4],
    [20, 0.95, 17, null],
    [71, 0.05, null, 9],
    [72, 0.05, 1, 9],
  ])("of %i values at p = %d has the ends %s and %s where values are too few", (count, p, low, high) => {
    expect(quantileInterval(ranks(count), p)).toEqual({ low, high });
  });
});

test("many values do not underflow", () => {
  const { low, high } = quantileInterval(ranks(100_000), 0.05);
  // Normal approximation: 5000 ± 1.96 √(100,000 × 0.05 × 0.95) = 5000 ± 135.1 [C].
  expect(low).toBeCloseTo(5000 - 135, -1);
  expect(high).toBeCloseTo(5001 + 135, -1);
});
