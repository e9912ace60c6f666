// Holds mean and standard deviation to the certified values of NIST's univariate reference data.
import { expect, test } from "vitest";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { alternating, lew, lottery, mavro } from "./nistUnivariate.ts";

// NIST Statistical Reference Datasets, univariate summary statistics, certified to 15 digits [R+C].
// NumAcc4: 10000000.1 has no exact double, and the nearest one raises the deviation by a relative 5.6e-9, with any method.
test.each([
  ["Lew", lew, 200, -177.435, 277.332168044316, 1e-12],
  ["Lottery", lottery, 218, 518.95871559633, 291.699727470969, 1e-12],
  ["Mavro", mavro, 50, 2.001856, 0.000429123454003053, 1e-9],
  ["NumAcc3", alternating(1000000.2, 1000000.1, 1000000.3), 1001, 1000000.2, 0.1, 1e-9],
  ["NumAcc4", alternating(10000000.2, 10000000.1, 10000000.3), 1001, 10000000.2, 0.1, 1e-8],
] as const)("%s has the certified mean and standard deviation", (_name, values, count, mean, sd, relative) => {
  const interval = meanInterval(values);
  expect(interval.count).toBe(count);
  expect(Math.abs(interval.mean / mean - 1)).toBeLessThan(1e-14);
  expect(Math.abs((interval.sd ?? NaN) / sd - 1)).toBeLessThan(relative);
});
