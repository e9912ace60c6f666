// Holds intervals, quantiles and required replications to a textbook example and to values of SciPy and NumPy.
import tCdf from "@stdlib/stats-base-dists-t-cdf";
import fc from "fast-check";
import { expect, test } from "vitest";
import { meanInterval, tFactor } from "#analysis/statistics/interval.ts";
import { quantiles } from "#analysis/statistics/quantiles.ts";
import { requiredReplications } from "#analysis/statistics/requiredReplications.ts";

// Law, Simulation Modeling and Analysis, bank model, ten average delays [M+C].
const bank = [1.53, 1.66, 1.24, 2.34, 2.0, 1.69, 2.69, 2.86, 1.7, 2.6];

test("a relative precision of 10 % takes the bank model 27 replications, not 23", () => {
  // Law, Simulation Modeling and Analysis: 27 with γ/(1 + γ); γ itself would give 23 [M+C].
  expect(requiredReplications(bank, 0.1, 0.9)).toBe(27);
  expect(requiredReplications(bank, 0.1 / 0.9, 0.9)).toBe(23);
});

test("no further replications are required when the precision is reached", () => {
  expect(requiredReplications(bank, 10)).toBe(10);
  expect(requiredReplications([5, 5, 5], 0.01)).toBe(3);
});

test("the required replications are null for one value and for a mean of 0", () => {
  expect(requiredReplications([4], 0.1)).toBeNull();
  expect(requiredReplications([-1, 1], 0.1)).toBeNull();
});

test("the required replications are the smallest sufficient number", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 1, max: 9, noNaN: true }), { minLength: 2, maxLength: 9 }), (values) => {
      const wanted = requiredReplications(values, 0.05) ?? NaN;
      const { mean, sd } = meanInterval(values);
      const halfWidth = (n: number) => (tFactor(0.95, n) * (sd ?? NaN)) / Math.sqrt(n);
      expect(halfWidth(wanted)).toBeLessThanOrEqual((0.05 / 1.05) * mean);
      if (wanted > values.length) expect(halfWidth(wanted - 1)).toBeGreaterThan((0.05 / 1.05) * mean);
    }),
  );
});

test("t quantiles have the values of SciPy", () => {
  // scipy.stats.t.ppf [C].
  expect(tFactor(0.95, 5)).toBeCloseTo(2.776445105197794, 12);
  expect(tFactor(0.95, 10)).toBeCloseTo(2.262157162798206, 12);
  expect(tFactor(0.95, 20)).toBeCloseTo(2.09302405440831, 12);
  expect(tFactor(0.9, 10)).toBeCloseTo(1.833112932656237, 12);
});

test("t quantiles invert @stdlib's distribution function, for few and for many values", () => {
  for (const count of [2, 3, 5, 20, 200, 10_000]) {
    for (const confidence of [0.9, 0.95, 0.99, 0.9995]) {
      expect(tCdf(tFactor(confidence, count), count - 1)).toBeCloseTo(1 - (1 - confidence) / 2, 10);
    }
  }
});

test("one value has a mean, but no standard deviation and no interval", () => {
  expect(meanInterval([7])).toEqual({ count: 1, mean: 7, sd: null, halfWidth: null, confidence: 0.95 });
});

test("equal values have an interval of width 0", () => {
  expect(meanInterval([7, 7, 7])).toMatchObject({ mean: 7, sd: 0, halfWidth: 0 });
});

test("quantiles interpolate linearly between ranks", () => {
  // numpy.quantile with its default method [C].
  const spread = quantiles([9, 2, 30, 4, 12, 4, 5, 11]);
  expect(spread.p05).toBeCloseTo(2.7, 12);
  expect(spread.p25).toBeCloseTo(4, 12);
  expect(spread.p50).toBeCloseTo(7, 12);
  expect(spread.p75).toBeCloseTo(11.25, 12);
  expect(spread.p95).toBeCloseTo(23.7, 12);
});
