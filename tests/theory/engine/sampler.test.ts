// Holds the moments of sampled distributions to the exact ones; strata of u replace random draws, so there is no noise.
import { expect, test } from "vitest";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import { isLong } from "../../support/caseCount.ts";
import { drawer, drawnTimes } from "../../support/draws/drawnTimes.ts";
import { distributionSd } from "../../support/draws/distributionSd.ts";
import { openStream } from "../../support/draws/openStream.ts";
import { TableSampler } from "../../support/draws/tableSampler.ts";

/** Strata of u that halve towards both ends, so that a heavy tail is summed as finely as the body. */
function strata(): readonly (readonly [number, number])[] {
  const halves = Array.from({ length: 31 }, (_, index) => [2 ** -(index + 2), 2 ** -(index + 1)] as const);
  const lower = [...halves, [0, 2 ** -32] as const];
  return [...lower, ...lower.map(([from, to]) => [1 - to, 1 - from] as const)];
}

/** Mean and standard deviation at midpoints in each stratum; differences from `center` keep the digits. */
function sampledMoments(sampler: TableSampler, center: number): { readonly mean: number; readonly sd: number } {
  const points = 8192;
  let first = 0;
  let second = 0;
  for (const [from, to] of strata()) {
    const weight = (to - from) / points;
    for (let point = 0; point < points; point++) {
      const distance = sampler.ticks(from + (point + 0.5) * weight) - center;
      first += weight * distance;
      second += weight * distance * distance;
    }
  }
  return { mean: center + first, sd: Math.sqrt(second - first * first) };
}

const seconds = { unit: 1e6 };
const shapes = [0.5, 1, 2, 5, 20];
const distributions: readonly Distribution[] = [
  { kind: "uniform", min: 2, max: 5 },
  { kind: "triangular", min: 1, mode: 1, max: 4 },
  { kind: "triangular", min: 1, mode: 2, max: 4 },
  { kind: "triangular", min: 1, mode: 4, max: 4 },
  { kind: "normal", mean: 10, sd: 1 },
  { kind: "normal", mean: 10, sd: 10 },
  { kind: "normal", mean: 0, sd: 10 },
  { kind: "exponential", mean: 10 },
  { kind: "gamma", mean: 10, sd: 0.1 },
  { kind: "lognormal", mean: 10, sd: 0.1 },
  ...shapes.map((shape) => ({ kind: "gamma", mean: 10, sd: 10 / Math.sqrt(shape) }) as const),
  ...shapes.map((shape) => ({ kind: "lognormal", mean: 10, sd: 10 / Math.sqrt(shape) }) as const),
  ...shapes.map((shape) => ({ kind: "weibull", scale: 10, shape }) as const),
  { kind: "empirical", values: [3, 1, 2, 7, 7] },
];

test.each(distributions)(
  "mean and standard deviation are within 1e-4 of the exact distribution's: %o",
  (distribution) => {
    const sampler = new TableSampler(distribution, seconds);
    const { mean, sd } = sampledMoments(sampler, sampler.meanTicks);
    expect(sampler.meanTicks).toBe(distributionMean(distribution) * 1e6);
    expect(Math.abs(mean / sampler.meanTicks - 1)).toBeLessThan(1e-4);
    expect(Math.abs(sd / 1e6 / distributionSd(distribution) - 1)).toBeLessThan(1e-4);
  },
);

test.each([
  // E[1/X] of a uniform distribution on [a, b] is ln(b/a)/(b − a) [C].
  [{ kind: "uniform", min: 0.01, max: 0.03 }, Math.log(3) / 0.02],
  // Each value has the same probability: (100 + 50 + 25) / 3, calculated by hand [C].
  [{ kind: "empirical", values: [0.01, 0.02, 0.04] }, 175 / 3],
  // Numerical integration of 1/max(0.1 mean, x) with SciPy 1.17.1 [C].
  [{ kind: "gamma", mean: 1, sd: 0.5 }, 1.3305274046057316],
  [{ kind: "normal", mean: 1, sd: 0.3 }, 1.1384820131949316],
] as const)("the mean time at a drawn rate is the mean of mass / rate: %o", (distribution, secondsPerKilogram) => {
  const sampler = TableSampler.ofRate(distribution, 1e6);
  expect(Math.abs(sampler.meanTicks / 1e6 / secondsPerKilogram - 1)).toBeLessThan(1e-5);
  const sampled = sampledMoments(sampler, sampler.meanTicks);
  expect(Math.abs(sampled.mean / sampler.meanTicks - 1)).toBeLessThan(1e-4);
});

const coreDraws = isLong ? 200_000 : 50_000;

test.each([
  ...distributions.map((distribution) => ({ distribution })),
  { distribution: { kind: "normal", mean: 0.1, sd: 0.03 } as const, amount: 60_000 },
  { distribution: { kind: "gamma", mean: 0.1, sd: 0.05 } as const, amount: 60_000 },
  { distribution: { kind: "empirical", values: [0.01, 0.02, 0.04] } as const, amount: 60_000 },
])("the core draws the same ticks as the reference sampler: %o", (time) => {
  const sampler =
    "amount" in time
      ? TableSampler.ofRate(time.distribution, time.amount)
      : new TableSampler(time.distribution, seconds);
  const seed = JSON.stringify(time);
  const next = openStream(seed, 0, drawer, "draw");
  const options = { seed, count: coreDraws, meanTicks: sampler.meanTicks };
  const drawn = drawnTimes([{ name: "draw", time: { distributions: [time] } }], options);
  expect(drawn.findIndex((ticks) => ticks !== sampler.ticks(next()))).toBe(-1);
});
