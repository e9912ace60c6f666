// Fits and goodness of fit against published values, and against an independent package.
import exponentialCdf from "@stdlib/stats-base-dists-exponential-cdf";
import gammaCdf from "@stdlib/stats-base-dists-gamma-cdf";
import gammaLogDensity from "@stdlib/stats-base-dists-gamma-logpdf";
import lognormalCdf from "@stdlib/stats-base-dists-lognormal-cdf";
import lognormalLogDensity from "@stdlib/stats-base-dists-lognormal-logpdf";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalLogDensity from "@stdlib/stats-base-dists-normal-logpdf";
import triangularCdf from "@stdlib/stats-base-dists-triangular-cdf";
import triangularLogDensity from "@stdlib/stats-base-dists-triangular-logpdf";
import weibullCdf from "@stdlib/stats-base-dists-weibull-cdf";
import weibullLogDensity from "@stdlib/stats-base-dists-weibull-logpdf";
import alea from "seedrandom/lib/alea.js";
import { describe, expect, it } from "vitest";
import { fitCensored } from "#analysis/fit/censored.ts";
import type { Family } from "#analysis/fit/family.ts";
import { gamma } from "#analysis/fit/gammaFamily.ts";
import { goodness } from "#analysis/fit/goodness.ts";
import { Autocorrelation, Moments, Trend } from "#analysis/fit/moments.ts";
import { exponential, logMoments, lognormal, normal } from "#analysis/fit/plainFamilies.ts";
import { triangular } from "#analysis/fit/triangularFamily.ts";
import { weibull } from "#analysis/fit/weibullFamily.ts";
import { isLong } from "../../support/caseCount.ts";
import { alternating, lew, lottery, mavro } from "../published/values/nistUnivariate.ts";

describe("the moments of a stream", () => {
  // NIST Statistical Reference Datasets, univariate summary statistics: mean and sd [R+C], lag-1 autocorrelation [M].
  it.each<[string, readonly number[], number, number, number]>([
    ["Lew", lew, -177.435, 277.332168044316, -0.307304800605679],
    ["Lottery", lottery, 518.95871559633, 291.699727470969, -0.120948622967393],
    ["Mavro", mavro, 2.001856, 0.000429123454003053, 0.93798918343825],
    ["NumAcc4", alternating(10_000_000.2, 10_000_000.1, 10_000_000.3), 10_000_000.2, 0.1, -0.999],
  ])("are those of %s", (_, values, mean, sd, autocorrelation) => {
    const moments = new Moments();
    const lag = new Autocorrelation();
    for (const value of values) {
      moments.add(value);
      lag.add(value);
    }
    expect(Math.abs(moments.mean / mean - 1)).toBeLessThan(1e-13);
    expect(Math.abs(moments.sd / sd - 1)).toBeLessThan(1e-7);
    expect(Math.abs(lag.value(moments)! / autocorrelation - 1)).toBeLessThan(1e-7);
  });

  it("are the same for joined parts", () => {
    const [whole, first, second] = [new Moments(), new Moments(), new Moments()];
    lew.forEach((value, i) => {
      whole.add(value);
      (i < 70 ? first : second).add(value);
    });
    first.join(second);
    expect(first.sd).toBeCloseTo(whole.sd, 10);
    expect(first.mean).toBeCloseTo(whole.mean, 10);
  });

  it("have the slope of the textbook formula", () => {
    // Five points by hand: mean time 3, mean value 4, Σ products 8, Σ squares 10, rest 2.4 [C].
    const trend = new Trend();
    [2, 4, 5, 4, 5].forEach((value, i) => trend.add(i + 1, value));
    const { slope, error, span } = trend.slope()!;
    expect(slope).toBeCloseTo(0.6, 12);
    expect(error).toBeCloseTo(Math.sqrt(2.4 / 3 / 10), 12);
    expect(span).toBe(4);
  });
});

describe("censored times", () => {
  // NIST/SEMATECH e-Handbook, section 8.4.1.3: 10 of 20 units had not failed at 500 h [R].
  const complete = Float64Array.of(54, 187, 216, 240, 244, 335, 361, 373, 375, 386);
  const fits = fitCensored({ complete, censored: new Float64Array(10).fill(500) });
  const fitOf = (kind: string) => fits.find(({ family }) => family.kind === kind)!;

  it("have the published Weibull fit", () => {
    const { parameters, logLikelihood } = fitOf("weibull");
    expect(parameters[0]).toBeCloseTo(606.528, 3);
    expect(parameters[1]).toBeCloseTo(1.7208, 4);
    expect(-logLikelihood).toBeCloseTo(75.135, 3);
  });

  it("have the published AIC of Weibull and lognormal fits", () => {
    expect(4 - 2 * fitOf("weibull").logLikelihood).toBeCloseTo(154.27, 2);
    expect(4 - 2 * fitOf("lognormal").logLikelihood).toBeCloseTo(154.39, 2);
  });

  it("have the exponential mean total time over failures", () => {
    expect(fitOf("exponential").parameters[0]).toBeCloseTo((2771 + 5000) / 10, 10);
  });
});

describe("distribution functions", () => {
  const points = [0.02, 0.3, 0.7, 0.95, 1, 1.2, 1.9, 4];
  const shapeOf = ([mean = 0, sd = 0]: readonly number[]): number => (mean / sd) ** 2;
  type Function = (value: number) => number;
  it.each<[Family, readonly number[], Function, Function]>([
    [normal, [1, 0.3], normalCdf.factory(1, 0.3), normalLogDensity.factory(1, 0.3)],
    [
      lognormal,
      [1, 0.4],
      lognormalCdf.factory(...logMoments([1, 0.4])),
      lognormalLogDensity.factory(...logMoments([1, 0.4])),
    ],
    [
      gamma,
      [1, 0.2],
      gammaCdf.factory(shapeOf([1, 0.2]), shapeOf([1, 0.2])),
      gammaLogDensity.factory(shapeOf([1, 0.2]), shapeOf([1, 0.2])),
    ],
    [weibull, [1, 1.5], weibullCdf.factory(1.5, 1), weibullLogDensity.factory(1.5, 1)],
    [triangular, [0.01, 0.9, 5], triangularCdf.factory(0.01, 5, 0.9), triangularLogDensity.factory(0.01, 5, 0.9)],
    [exponential, [0.8], exponentialCdf.factory(1 / 0.8), (x) => -x / 0.8 - Math.log(0.8)],
  ])("of $kind are those of the independent package", (family, parameters, cdf, logDensity) => {
    for (const x of points) {
      expect(family.probability(parameters)(x)).toBeCloseTo(cdf(x), 9);
      expect(family.logDensity(parameters)(x)).toBeCloseTo(logDensity(x), 9);
    }
  });
});

describe("critical values for fitted parameters", () => {
  /** The share of samples of the family's own fit below a critical value. */
  const below = (
    family: Family,
    parameters: readonly number[],
    count: number,
    isBelow: (a2: number, d: number) => boolean,
  ) => {
    const next = family.sampler(parameters, alea(`critical ${family.kind}`));
    const samples = isLong ? 20_000 : 3000;
    const inside = Array.from({ length: samples }, () => {
      const sorted = Float64Array.from({ length: count }, next).toSorted();
      const found = goodness(sorted, family.probability(family.fit(sorted)!));
      return isBelow(found.andersonDarling, found.kolmogorovSmirnov);
    }).filter(Boolean).length;
    return { share: inside / samples, half: 3.3 * Math.sqrt((0.05 * 0.95) / samples) };
  };

  // D'Agostino and Stephens, Goodness-of-Fit Techniques, 1986, tables 4.7, 4.14 and 4.17; the NIST e-Handbook,
  // section 1.3.5.14, repeats them; Lilliefors (1967) for D [M].
  it.each<[string, Family, readonly number[], (n: number) => (a2: number, d: number) => boolean]>([
    ["A² normal 0.752", normal, [10, 1], (n) => (a2) => a2 * (1 + 0.75 / n + 2.25 / (n * n)) < 0.752],
    ["A² exponential 1.321", exponential, [1], (n) => (a2) => a2 * (1 + 0.6 / n) < 1.321],
    ["A² Weibull 0.757", weibull, [1, 2], (n) => (a2) => a2 * (1 + 0.2 / Math.sqrt(n)) < 0.757],
    ["D normal 0.886 / √n", normal, [10, 1], (n) => (_, d) => d * (Math.sqrt(n) - 0.01 + 0.85 / Math.sqrt(n)) < 0.895],
  ])("have 5 percent above: %s", (_, family, parameters, test) => {
    const count = 50;
    const { share, half } = below(family, parameters, count, test(count));
    expect(Math.abs(share - 0.95)).toBeLessThan(half + 0.003);
  });
});
