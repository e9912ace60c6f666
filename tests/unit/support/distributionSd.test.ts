// The standard deviations that sampled moments are compared with.
import { expect, test } from "vitest";
import { distributionSd } from "../../support/draws/distributionSd.ts";

test.each([
  // Numerical integration of max(0, x) and its square, SciPy 1.17.1 [C]
  [10, 5, 4.899480510184813],
  [10, 10, 8.666532223684523],
  [0, 3, 1.7514581103106472],
  [2, 4, 2.975743818149814],
])("of a normal distribution of %d and %d, clamped at 0, it is %d", (mean, sd, clamped) => {
  expect(Math.abs(distributionSd({ kind: "normal", mean, sd }) / clamped - 1)).toBeLessThan(1e-8);
});

test("of half a normal distribution it is √(1/2 − 1/(2π))", () => {
  // Half-normal moments [M+C]
  expect(distributionSd({ kind: "normal", mean: 0, sd: 1 })).toBeCloseTo(Math.sqrt(1 / 2 - 1 / (2 * Math.PI)), 12);
});
