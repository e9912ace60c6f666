// Holds means and quantiles of the distributions to independent libraries and published values.
import exponential from "@stdlib/stats-base-dists-exponential-quantile";
import lognormal from "@stdlib/stats-base-dists-lognormal-quantile";
import triangular from "@stdlib/stats-base-dists-triangular-quantile";
import triangularMean from "@stdlib/stats-base-dists-triangular-mean";
import uniform from "@stdlib/stats-base-dists-uniform-quantile";
import weibull from "@stdlib/stats-base-dists-weibull-quantile";
import weibullMean from "@stdlib/stats-base-dists-weibull-mean";
import { describe, expect, test } from "vitest";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { gammaQuantile } from "#engine/distributions/gammaQuantile.ts";
import { distributionMean, distributionQuantile } from "#engine/distributions/moments.ts";

const probabilities = [1e-9, 1e-4, 0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99, 0.9999, 1 - 1e-9];

function expectClose(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

describe("quantiles agree with @stdlib to 1e-9", () => {
  // Mean 10, sd 5: sigma² = ln 1.25, mu = ln 10 − sigma²/2 (Johnson, Kotz and Balakrishnan, Continuous Univariate
  // Distributions, vol. 1, ch. 14 [M+C]).
  const sigma = Math.sqrt(Math.log(1.25));
  const mu = Math.log(10) - Math.log(1.25) / 2;
  const cases: readonly (readonly [Distribution, (p: number) => number])[] = [
    [{ kind: "uniform", min: 2, max: 5 }, (p) => uniform(p, 2, 5)],
    [{ kind: "triangular", min: 1, mode: 2, max: 5 }, (p) => triangular(p, 1, 5, 2)],
    [{ kind: "triangular", min: 1, mode: 1, max: 5 }, (p) => triangular(p, 1, 5, 1)],
    [{ kind: "exponential", mean: 4 }, (p) => exponential(p, 1 / 4)],
    [{ kind: "weibull", scale: 3, shape: 0.5 }, (p) => weibull(p, 0.5, 3)],
    [{ kind: "weibull", scale: 3, shape: 20 }, (p) => weibull(p, 20, 3)],
    [{ kind: "lognormal", mean: 10, sd: 5 }, (p) => lognormal(p, mu, sigma)],
  ];
  // At p = 1e-9 the library computes with 1 − p, which keeps seven digits of p.
  test.each(cases)("%o", (distribution, quantile) => {
    for (const p of probabilities)
      expectClose(distributionQuantile(distribution)(p), quantile(p), p < 1e-6 ? 1e-7 : 1e-9);
  });
});

test("normal quantiles have the published values", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1 [M]; further digits [C].
  const quantile = distributionQuantile({ kind: "normal", mean: 100, sd: 1 });
  expect(quantile(0.975) - 100).toBeCloseTo(1.959963984540054, 12);
  expect(quantile(0.95) - 100).toBeCloseTo(1.6448536269514722, 12);
  expect(quantile(0.5)).toBe(100);
});

test("gamma quantiles are half those of chi-squared", () => {
  // Chi-squared .95 with 1, 10, 30 degrees of freedom: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4 [M]; further
  // digits [C].
  expect(2 * gammaQuantile(0.95, 0.5)).toBeCloseTo(3.841459, 6);
  expect(2 * gammaQuantile(0.95, 5)).toBeCloseTo(18.307038, 6);
  expect(2 * gammaQuantile(0.95, 15)).toBeCloseTo(43.772972, 6);
});

test("gamma quantiles of a narrow distribution have the values of SciPy", () => {
  // scipy.stats.gamma.ppf of SciPy 1.17.1 at p = .001, .5, .975 [C].
  const computed = new Map([
    [500, [433.7395413036385, 499.6667062016905, 544.7654563874568]],
    [1e3, [905.1207909349766, 999.6666864269652, 1062.9211512248878]],
    [1e4, [9693.824385823726, 9999.666668642047, 10196.941824999883]],
    [1e6, [996912.6173198152, 999999.6666666864, 1001960.9109654503]],
  ]);
  for (const [shape, quantiles] of computed) {
    [0.001, 0.5, 0.975].forEach((p, index) => expectClose(gammaQuantile(p, shape), quantiles[index] ?? NaN, 1e-10));
  }
});

test("gamma quantiles of a narrow distribution are within a part of its standard deviation that grows with the distance", () => {
  // Roots of the incomplete gamma function of mpmath 1.3.0 at 40 digits [C].
  const computed = new Map([
    [
      500,
      [
        371.0614136915444, 400.81221880343287, 433.7395413036384, 488.0367956288871, 613.8214249353271,
        655.0265244775061,
      ],
    ],
    [
      700,
      [
        545.1400347591848, 581.3537149637913, 621.0811271393771, 685.8877258020949, 833.3214212850612,
        880.9551007469815,
      ],
    ],
    [
      2500,
      [
        2196.0393353611307, 2269.485112576903, 2348.3336908678993, 2473.5402724288706, 2745.4194621948127,
        2830.068761221709,
      ],
    ],
  ]);
  const [tail, million] = [2 ** -33, 2 ** -20];
  const places = [tail, 1e-6, 0.001, 0.3, 1 - million, 1 - tail];
  const limits = [7e-9, 1e-9, 4e-11, 1e-12, 1e-9, 7e-9];
  for (const [shape, quantiles] of computed)
    quantiles.forEach((quantile, i) =>
      expect(Math.abs(gammaQuantile(places[i]!, shape) - quantile) / Math.sqrt(shape)).toBeLessThan(limits[i]!),
    );
});

test("a normal distribution is clamped at 0 in its quantiles and its mean", () => {
  expect(distributionQuantile({ kind: "normal", mean: 1, sd: 1 })(0.1)).toBe(0);
  // Numerical integration of max(0, x) with SciPy 1.17.1 [C].
  const cases = [
    [10, 5, 10.04245351308415],
    [10, 10, 10.833154705876803],
    [0, 3, 1.1968268412042982],
    [2, 4, 2.791186229605224],
  ] as const;
  for (const [mean, sd, clamped] of cases) expectClose(distributionMean({ kind: "normal", mean, sd }), clamped, 1e-8);
  // E max(0, Z) = 1/√(2π), by integration [C].
  expect(distributionMean({ kind: "normal", mean: 0, sd: 1 })).toBeCloseTo(0.3989422804014327, 12);
});

test("means of triangular and Weibull distributions agree with @stdlib", () => {
  expectClose(distributionMean({ kind: "triangular", min: 1, mode: 2, max: 5 }), triangularMean(1, 5, 2), 1e-12);
  for (const shape of [0.5, 1, 2, 5, 20]) {
    expectClose(distributionMean({ kind: "weibull", scale: 10, shape }), weibullMean(shape, 10), 1e-9);
  }
});

test("an empirical distribution gives each value the same weight", () => {
  const distribution: Distribution = { kind: "empirical", values: [7, 1, 4, 4] };
  expect([0, 0.24, 0.25, 0.5, 0.75, 1].map(distributionQuantile(distribution))).toEqual([1, 1, 4, 4, 7, 7]);
  expect(distributionMean(distribution)).toBe(4);
});

test("a distribution without spread is its value, for every kind", () => {
  const degenerate: readonly Distribution[] = [
    { kind: "fixed", value: 3 },
    { kind: "uniform", min: 3, max: 3 },
    { kind: "triangular", min: 3, mode: 3, max: 3 },
    { kind: "normal", mean: 3, sd: 0 },
    { kind: "lognormal", mean: 3, sd: 0 },
    { kind: "gamma", mean: 3, sd: 0 },
  ];
  for (const distribution of degenerate) {
    expect([
      distributionMean(distribution),
      distributionQuantile(distribution)(0),
      distributionQuantile(distribution)(1),
    ]).toEqual([3, 3, 3]);
  }
});
