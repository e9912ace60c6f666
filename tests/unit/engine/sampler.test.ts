// The properties of a single draw: whole ticks, never negative, monotone in u, equal to the distribution's quantile.
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { distributionQuantile } from "#engine/distributions/moments.ts";
import { Sampler, SLOWEST_SHARE, TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { distributionSd } from "../../support/draws/distributionSd.ts";
import { TableSampler } from "../../support/draws/tableSampler.ts";

const seconds = { unit: TICKS_PER_SECOND };
const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });
const shape = fc.double({ min: 0.3, max: 30, noNaN: true });
const uniformNumber = fc.oneof(fc.nat(2 ** 32 - 1), fc.constantFrom(0, 2 ** 32 - 1)).map((n) => n / 2 ** 32);

const anyDistribution: fc.Arbitrary<Distribution> = fc.oneof(
  positive.map((value) => ({ kind: "fixed", value }) as const),
  fc.tuple(positive, positive).map(([min, width]) => ({ kind: "uniform", min, max: min + width }) as const),
  fc
    .tuple(positive, positive, positive)
    .map(([min, left, right]) => ({ kind: "triangular", min, mode: min + left, max: min + left + right }) as const),
  fc.tuple(positive, positive).map(([mean, sd]) => ({ kind: "normal", mean, sd }) as const),
  fc.tuple(positive, shape).map(([mean, k]) => ({ kind: "lognormal", mean, sd: mean / Math.sqrt(k) }) as const),
  fc.tuple(positive, shape).map(([mean, k]) => ({ kind: "gamma", mean, sd: mean / Math.sqrt(k) }) as const),
  positive.map((mean) => ({ kind: "exponential", mean }) as const),
  fc.tuple(positive, shape).map(([scale, k]) => ({ kind: "weibull", scale, shape: k }) as const),
  fc.array(positive, { minLength: 1, maxLength: 9 }).map((values) => ({ kind: "empirical", values }) as const),
);

test("a draw is a whole number of ticks, not negative, and rises with u", () => {
  fc.assert(
    fc.property(anyDistribution, uniformNumber, uniformNumber, (distribution, one, other) => {
      const sampler = new TableSampler(distribution, seconds);
      const low = sampler.ticks(Math.min(one, other));
      const high = sampler.ticks(Math.max(one, other));
      expect(Number.isSafeInteger(low) && Number.isSafeInteger(high)).toBe(true);
      expect(low).toBeGreaterThanOrEqual(0);
      expect(low).toBeLessThanOrEqual(high);
    }),
  );
});

test("the time at a drawn rate falls as u rises, and is finite at every u", () => {
  fc.assert(
    fc.property(anyDistribution, uniformNumber, uniformNumber, (distribution, one, other) => {
      const sampler = TableSampler.ofRate(distribution, 60_000);
      const long = sampler.ticks(Math.min(one, other));
      const short = sampler.ticks(Math.max(one, other));
      expect(Number.isFinite(long)).toBe(true);
      expect(short).toBeLessThanOrEqual(long);
    }),
  );
});

test("draws rise across every boundary of the table", () => {
  const sampler = new TableSampler({ kind: "gamma", mean: 10, sd: 12 }, { unit: 1e12 });
  const borders = [1 / 32768, 2 / 32768, 1 / 32, 33 / 1024, 0.5, 31 / 32, 1 - 2 / 32768, 1 - 1 / 32768];
  for (const border of borders) {
    const around = [-2, -1, 0, 1, 2].map((step) => sampler.ticks(border + step / 2 ** 32));
    expect(around).toEqual(around.toSorted((a, b) => a - b));
  }
});

test("a draw is within 5e-4 of the distribution's quantile or of its standard deviation, and exact at the ends", () => {
  // The largest measured difference is 3.9e-4, for the lognormal distribution at the start of its interpolated upper tail.
  const distributions: readonly Distribution[] = [
    { kind: "normal", mean: 10, sd: 1 },
    { kind: "lognormal", mean: 10, sd: 10 },
    { kind: "gamma", mean: 10, sd: 7 },
    { kind: "exponential", mean: 10 },
    { kind: "triangular", min: 1, mode: 2, max: 4 },
  ];
  for (const distribution of distributions) {
    const sampler = new TableSampler(distribution, { unit: 1e12 });
    const quantile = distributionQuantile(distribution);
    const distance = (u: number) =>
      Math.abs(sampler.ticks(u) / 1e12 - quantile(u)) / Math.max(distributionSd(distribution), quantile(u));
    const body = Array.from({ length: 65_536 }, (_, part) => distance((part + 0.37) / 65_536));
    expect(Math.max(0, ...body)).toBeLessThan(5e-4);
    for (const u of [2 ** -32, 2 ** -13, 1 - 2 ** -13, 1 - 2 ** -32]) expect(distance(u)).toBeLessThan(1e-12);
  }
});

test("a fixed distribution gives its value, rounded once", () => {
  const sampler = new Sampler({ kind: "fixed", value: 1.8 }, seconds);
  expect(sampler.isFixed).toBe(true);
  expect([0, 0.5, 1 - 2 ** -32].map((u) => sampler.exactTicks(u))).toEqual([1_800_000, 1_800_000, 1_800_000]);
  expect(sampler.meanTicks).toBe(1_800_000);
});

test("only a distribution without spread is fixed", () => {
  expect(new Sampler({ kind: "normal", mean: 3, sd: 0 }, seconds).isFixed).toBe(true);
  expect(new Sampler({ kind: "empirical", values: [2, 2] }, seconds).isFixed).toBe(true);
  expect(new Sampler({ kind: "empirical", values: [2, 3] }, seconds).isFixed).toBe(false);
  expect(new Sampler({ kind: "uniform", min: 2, max: 3 }, seconds).isFixed).toBe(false);
});

test("an empirical distribution gives each value to an equal part of u, the smallest first", () => {
  const sampler = new Sampler({ kind: "empirical", values: [3, 1, 2] }, seconds);
  expect([0, 0.33, 0.34, 0.66, 0.67, 1 - 2 ** -32].map((u) => sampler.exactTicks(u) / 1e6)).toEqual([1, 1, 2, 2, 3, 3]);
});

test("60 g at 60 kg/h take 3.6 s", () => {
  // 0.060 kg / (60 / 3600 kg/s) = 3.6 s, calculated by hand [C].
  const sampler = Sampler.ofRate({ kind: "fixed", value: 60 / 3600 }, 60_000);
  expect(sampler.exactTicks(0)).toBe(3_600_000);
  expect(sampler.meanTicks).toBeCloseTo(3_600_000, 6);
});

test("a rate is never drawn below a tenth of its mean", () => {
  const sampler = Sampler.ofRate({ kind: "empirical", values: [0, 1, 2] }, 1e6);
  expect(sampler.exactTicks(0)).toBe(1e6 / SLOWEST_SHARE);
});

test("distributions that no valid scenario contains violate an invariant", () => {
  expect(() => new Sampler({ kind: "normal", mean: NaN, sd: 1 }, seconds)).toThrow("finite");
  expect(() => new Sampler({ kind: "uniform", min: 2, max: 1 }, seconds)).toThrow("not negative");
  expect(() => new Sampler({ kind: "empirical", values: [] }, seconds)).toThrow("has values");
  expect(() => Sampler.ofRate({ kind: "fixed", value: 0 }, 1)).toThrow("above 0");
});
