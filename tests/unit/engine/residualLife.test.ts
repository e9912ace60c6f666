// The residual life of an interval against closed forms, and the stops that it brings.
import { expect, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { distributionMean, distributionQuantile } from "#engine/distributions/moments.ts";
import { residualLife } from "#engine/distributions/residualLife.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

// [M] Cox, Renewal Theory (1962): the mean of the forward recurrence time is (μ² + σ²) / (2 μ).
const intervals: readonly (readonly [Distribution, mean: number, sd: number])[] = [
  [{ kind: "gamma", mean: 30, sd: 15 }, 30, 15],
  [{ kind: "lognormal", mean: 30, sd: 20 }, 30, 20],
  [{ kind: "uniform", min: 10, max: 40 }, 25, 30 / Math.sqrt(12)],
  [{ kind: "fixed", value: 7 }, 7, 0],
  [{ kind: "exponential", mean: 4 }, 4, 4],
  [{ kind: "empirical", values: [10, 30] }, 20, 10],
];

test.for(intervals)("mean of the rest of %o", ([interval, mean, sd]) => {
  const rest = residualLife(interval);
  expect(distributionMean(rest) / ((mean * mean + sd * sd) / (2 * mean))).toBeCloseTo(1, 2);
});

test("quantiles of the rest of a uniform interval, by its distribution function", () => {
  const rest = distributionQuantile(residualLife({ kind: "uniform", min: 10, max: 40 }));
  // [C] F_e(x) = x / 25 up to 10, then (10 + ((40 − 10)² − (40 − x)²) / 60) / 25.
  const share = (x: number): number => (x <= 10 ? x / 25 : (10 + (900 - (40 - x) ** 2) / 60) / 25);
  for (const p of [0.05, 0.25, 0.39, 0.5, 0.75, 0.95]) expect(share(rest(p))).toBeCloseTo(p, 2);
});

test.for([
  ["between: { gamma: [10 min, 3 min] }, clock: calendar", 600],
  ["cycles: 46", 46 * 13.05],
] as const)(
  "a running clock (%s) brings as many stops as intervals fit in, however short the run is",
  ([clock, mean]) => {
    const seconds = 900;
    const text = cellText(1, `stops: [{ name: check, resource: station 1, ${clock}, repair: 1 ms, step: finish }]`);
    const cell = planCell(scenarioOf(text, `run.length=${seconds} s`, "run.warmup=0 s"));
    const counts = Array.from({ length: 400 }, (_, i) => runCell(cell, { replication: i + 1 }).stops.length);
    const found = counts.reduce((sum, count) => sum + count, 0) / counts.length;
    // [M] Cox: an equilibrium renewal process has t / μ events on average. 3.5 standard errors of 400 counts with an sd below 0.5.
    expect(Math.abs(found - seconds / mean)).toBeLessThan((3.5 * 0.5) / Math.sqrt(counts.length));
  },
);
