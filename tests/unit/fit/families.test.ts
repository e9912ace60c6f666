// Laws of every family, maximum likelihood against an own maximisation, and censored times; all values by hand or by law.
import alea from "seedrandom/lib/alea.js";
import { describe, expect, it } from "vitest";
import { censoredRanges, fitCensored } from "#analysis/fit/censored.ts";
import { logLikelihood, type Family } from "#analysis/fit/family.ts";
import { gamma } from "#analysis/fit/gammaFamily.ts";
import { Autocorrelation, Moments, Trend } from "#analysis/fit/moments.ts";
import { exponential, logMoments, lognormal, lognormalOf, normal, uniform } from "#analysis/fit/plainFamilies.ts";
import { simplexSearch } from "#analysis/fit/simplexSearch.ts";
import { triangular } from "#analysis/fit/triangularFamily.ts";
import { bestMode, triangularLikelihood } from "#analysis/fit/triangularLikelihood.ts";
import { triangularBySpacings } from "#analysis/fit/triangularSpacings.ts";
import { weibull } from "#analysis/fit/weibullFamily.ts";

const sampleOf = (family: Family, parameters: readonly number[], count: number, seed = "sample") =>
  Float64Array.from({ length: count }, family.sampler(parameters, alea(seed))).toSorted();

const examples: readonly (readonly [Family, readonly number[]])[] = [
  [normal, [7.5, 0.3]],
  [lognormal, [12, 4]],
  [gamma, [0.85, 0.2]],
  [gamma, [0.5, 0.7]],
  [gamma, [10, 0.4]],
  [gamma, [10, 0.8]],
  [weibull, [40, 1.5]],
  [weibull, [40, 0.7]],
  [exponential, [3]],
  [triangular, [7, 7.5, 9]],
  [uniform, [7, 8]],
];

describe.each(examples)("the family $kind with %j", (family, parameters) => {
  const values = sampleOf(family, parameters, 4000);

  it("has a density that is the slope of its probability", () => {
    const [density, probability] = [family.logDensity(parameters), family.probability(parameters)];
    for (const share of [0.05, 0.3, 0.5, 0.8, 0.95]) {
      const at = values[Math.floor(share * values.length)]!;
      const step = at * 1e-5;
      const slope = (probability(at + step) - probability(at - step)) / (2 * step);
      expect(Math.exp(density(at)) / slope).toBeCloseTo(1, 4);
    }
  });

  it("draws values of its probability", () => {
    // The largest distance of 4,000 values is below 1.63 / √4,000 = 0.026 in 99 % of samples (Kolmogorov) [M].
    const probability = family.probability(parameters);
    const far = values.reduce((most, value, i) => Math.max(most, Math.abs(probability(value) - (i + 0.5) / values.length)), 0); // prettier-ignore
    expect(far).toBeLessThan(0.026);
  });

  it("has a fit that no near parameters exceed", () => {
    const some = sampleOf(family, parameters, 60, "some");
    const fitted = family.fit(some)!;
    const best = logLikelihood(family, fitted, some);
    expect(best).toBeGreaterThan(logLikelihood(family, parameters, some) - 1e-9);
    for (const i of fitted.keys())
      for (const factor of [0.9999, 1.0001]) {
        const moved = fitted.map((value, j) => (i === j ? value * factor : value));
        const likelihood = logLikelihood(family, moved, some);
        expect(likelihood).toBeLessThan(best + 1e-4);
      }
    expect(family.distribution(fitted)).toMatchObject({ kind: family.kind, ...Object.fromEntries(family.parameters.map((name, i) => [name, fitted[i]])) }); // prettier-ignore
  });

  it("keeps its shape in another unit of time", () => {
    const some = sampleOf(family, parameters, 60, "some");
    // A power of two, so that every value is exact.
    const scaled = family.fit(some.map((value) => value / 16))!;
    const isTime = (i: number): boolean => !(family.kind === "weibull" && i === 1);
    const fitted = family.fit(some)!;
    fitted.forEach((value, i) => expect(scaled[i]! / (isTime(i) ? value / 16 : value)).toBeCloseTo(1, 6));
    // A logarithm moves by that of the unit, and its scale stays; a time and its scale change with the unit.
    const pivots = family.pivots(fitted);
    family.pivots(scaled).forEach(({ at, scale, isLog }, i) => {
      const one = pivots[i]!;
      expect(at).toBeCloseTo(!isTime(i) ? one.at : isLog ? one.at - Math.log(16) : one.at / 16, 5);
      expect(scale / one.scale).toBeCloseTo(isLog ? 1 : 1 / 16, 6);
    });
  });
});

describe("the pivots of a family", () => {
  const scalesOf = (family: Family, ...parameters: readonly number[]) =>
    family.pivots(parameters).map(({ scale }) => scale);

  it("have the scale of the error: of the logarithm of a mean sd / mean, of a Weibull scale 1 / shape", () => {
    expect([scalesOf(lognormal, 8, 2), scalesOf(gamma, 8, 2)]).toEqual([[0.25, 1], [0.25, 1]]); // prettier-ignore
    expect([scalesOf(weibull, 40, 4), scalesOf(exponential, 40), scalesOf(normal, 8, 2)]).toEqual([[0.25, 1], [1], [2, 1]]); // prettier-ignore
    expect([scalesOf(uniform, 7, 9), scalesOf(triangular, 7, 8, 10)]).toEqual([[2, 2], [3, 3, 3]]); // prettier-ignore
  });
});

describe("outside of what is possible", () => {
  it("the probability is 0 or 1", () => {
    for (const [family, parameters] of examples.filter(([{ kind }]) => kind !== "normal")) {
      const probability = family.probability(parameters);
      expect([probability(-1), probability(0)]).toEqual([0, 0]);
      expect(probability(1e9)).toBeCloseTo(1, 9);
    }
    expect(uniform.logDensity([7, 8])(6.9)).toBe(-Infinity);
    expect([uniform.logDensity([7, 9])(7), uniform.logDensity([7, 9])(9)]).toEqual([-Math.LN2, -Math.LN2]);
    expect([triangular.logDensity([7, 8, 9])(6.9), triangular.logDensity([7, 8, 9])(9.1)]).toEqual([-Infinity, -Infinity]); // prettier-ignore
  });

  it("there is no fit", () => {
    const withZero = Float64Array.of(0, 1, 2);
    for (const family of [lognormal, gamma, weibull, exponential]) expect(family.fit(withZero)).toBeUndefined();
    const equal = Float64Array.of(2, 2, 2);
    for (const family of [gamma, weibull, triangular]) expect(family.fit(equal)).toBeUndefined();
    expect(triangularBySpacings(equal)).toBeUndefined();
  });
});

describe("the lognormal family", () => {
  it("has mean and sd of the quantity, and those of its logarithm back", () => {
    // e^(0.5 / 2) and e^0.25 √(e^0.5 − 1).
    const parameters = lognormalOf([0, Math.sqrt(0.5)]);
    expect(parameters[0]).toBeCloseTo(Math.exp(0.25), 12);
    expect(parameters[1]).toBeCloseTo(Math.exp(0.25) * Math.sqrt(Math.expm1(0.5)), 12);
    expect(logMoments(lognormalOf([1.5, 0.25])).map((each) => Number(each.toFixed(12)))).toEqual([1.5, 0.25]);
  });
});

describe("the triangular family", () => {
  it("has its likelihood, also where the product of densities is too small for a number", () => {
    const values = sampleOf(triangular, [7, 7.5, 9], 3000);
    const [min, mode, max] = [6.9, 7.6, 9.2];
    const direct = logLikelihood(triangular, [min, mode, max], values);
    expect(triangularLikelihood(values, [min, mode, max])).toBeCloseTo(direct, 6);
  });

  it("has the most likely of all modes between given ends", () => {
    for (const seed of ["a", "b", "c"]) {
      const values = sampleOf(triangular, [7, 7.5, 9], 40, seed);
      const all = [...values].map((mode) => ({ mode, likelihood: triangularLikelihood(values, [6.95, mode, 9.1]) }));
      const best = all.reduce((one, other) => (other.likelihood > one.likelihood ? other : one));
      expect(bestMode(values, [6.95, 9.1])).toEqual(best);
    }
    // By hand: of 1, 2, 3 between 0 and 4 the middle one: densities 1/4, 1/2, 1/4.
    expect(bestMode(Float64Array.of(1, 2, 3), [0, 4])).toEqual({ mode: 2, likelihood: expect.closeTo(-Math.log(32), 12) as number }); // prettier-ignore
  });

  it.each([100, 799])("has the maximum over all of %d values", (count) => {
    const values = sampleOf(triangular, [7, 7.5, 9], count);
    const [min = 0, mode = 0, max = 0] = triangular.fit(values)!;
    const [first, last] = [values[0]!, values.at(-1)!];
    const best = (ends: readonly [number, number]) => bestMode(values, ends).likelihood;
    const ends = ([a = 0, b = 0]: readonly number[]) => [first - Math.exp(a), last + Math.exp(b)] as const;
    const starts = [[-1, -1], [-4, -1], [-1, -4], [-4, -4]]; // prettier-ignore
    const own = Math.max(...starts.map((start) => best(ends(simplexSearch((point) => -best(ends(point)), start, 1, 400))))); // prettier-ignore
    expect(triangularLikelihood(values, [min, mode, max])).toBeGreaterThan(own - 1e-3);
  });

  it("is fitted from 400 of more values, near to the truth", () => {
    const [min = 0, mode = 0, max = 0] = triangular.fit(sampleOf(triangular, [7, 7.5, 9], 8000))!;
    expect(Math.max(Math.abs(min - 7), Math.abs(mode - 7.5), Math.abs(max - 9))).toBeLessThan(0.1);
  });

  it("has intervals whose ends are less likely than the fit by 2.4 at the best other parameters", () => {
    const values = sampleOf(triangular, [7, 7.5, 9], 60);
    const fitted = triangular.fit(values)!;
    const [first, last] = [values[0]!, values.at(-1)!];
    const profileOfMax = (max: number) => {
      const of = ([a = 0]: readonly number[]) => -bestMode(values, [first - Math.exp(a), max]).likelihood;
      return -Math.min(...[-1, -4].map((start) => of(simplexSearch(of, [start], 1, 200))));
    };
    const profileOfMin = (min: number) => {
      const of = ([b = 0]: readonly number[]) => -bestMode(values, [min, last + Math.exp(b)]).likelihood;
      return -Math.min(...[-1, -4].map((start) => of(simplexSearch(of, [start], 1, 200))));
    };
    const best = triangularLikelihood(values, fitted as unknown as [number, number, number]);
    const [minRange, modeRange, maxRange] = triangular.ranges!(values, fitted);
    expect(profileOfMin(minRange![0]) - best).toBeCloseTo(-2.4, 2);
    expect(profileOfMax(maxRange![1]) - best).toBeCloseTo(-2.4, 2);
    for (const [i, [low, high]] of [minRange!, modeRange!, maxRange!].entries()) {
      expect(low).toBeLessThanOrEqual(fitted[i]!);
      expect(high).toBeGreaterThanOrEqual(fitted[i]!);
    }
    expect([minRange![1] <= first, maxRange![0] >= last]).toEqual([true, true]);
  });

  it("has no interval beyond three ranges of the fit, as of two values", () => {
    const two = Float64Array.of(1, 2);
    const [min = 0, , max = 0] = triangular.fit(two)!;
    const [minRange, , maxRange] = triangular.ranges!(two, triangular.fit(two)!);
    expect([minRange![0], maxRange![1]]).toEqual([min - 3 * (max - min), 2 + 3 * (max - min)].map((end) => expect.closeTo(end, 6) as number)); // prettier-ignore
  });

  it("has ends outside the values by spacings, near to the truth", () => {
    const values = sampleOf(triangular, [7, 7.5, 9], 300);
    const [min = 0, mode = 0, max = 0] = triangularBySpacings(values)!;
    expect([min < values[0]!, max > values.at(-1)!]).toEqual([true, true]);
    expect(Math.max(Math.abs(min - 7), Math.abs(mode - 7.5), Math.abs(max - 9))).toBeLessThan(0.2);
    // The probability of the average space is 1 / 301: no triangle near has a larger product of spaces.
    const product = ([a = 0, b = 0, c = 0]: readonly number[]) => {
      const probability = triangular.probability([a, b, c]);
      return [...values, c].reduce(({ sum, before }, value) => ({ sum: sum + Math.log(probability(value) - before), before: probability(value) }), { sum: 0, before: 0 }).sum; // prettier-ignore
    };
    const best = product([min, mode, max]);
    for (const [a, b, c] of [[0.01, 0, 0], [-0.01, 0, 0], [0, 0.03, 0], [0, -0.03, 0], [0, 0, 0.02], [0, 0, -0.01]] as const)
      expect(product([min + a, mode + b, max + c])).toBeLessThan(best + 0.02); // prettier-ignore
  });
});

describe("times of which some are cut off", () => {
  const none = new Float64Array(0);
  const kinds = (complete: readonly number[], censored: readonly number[] = []) =>
    fitCensored({ complete: Float64Array.from(complete), censored: Float64Array.from(censored) }).map(({ family }) => family.kind); // prettier-ignore

  it("are fitted as far as they can be", () => {
    expect(kinds([1, 2, 4])).toEqual(["exponential", "weibull", "lognormal"]);
    expect(kinds([3])).toEqual(["exponential"]);
    expect(kinds([3, 3])).toEqual(["exponential"]);
    expect(kinds([], [5])).toEqual([]);
    expect(kinds([0, 3])).toEqual(["exponential"]);
  });

  it("are the plain fits where none is", () => {
    const complete = sampleOf(weibull, [40, 1.5], 30);
    for (const { family, parameters, logLikelihood: found } of fitCensored({ complete, censored: none })) {
      const plain = family.fit(complete)!;
      parameters.forEach((value, i) => expect(value / plain[i]!).toBeCloseTo(1, 9));
      expect(found).toBeCloseTo(logLikelihood(family, plain, complete), 6);
    }
  });

  it("count with the chance of being longer: no near parameters are more likely", () => {
    const times = { complete: sampleOf(lognormal, [12, 6], 30), censored: Float64Array.of(10, 20, 30, 2) };
    for (const { family, parameters, logLikelihood: best } of fitCensored(times)) {
      const likelihood = (moved: readonly number[]) =>
        logLikelihood(family, moved, times.complete) +
        times.censored.reduce((sum, value) => sum + Math.log(1 - family.probability(moved)(value)), 0);
      expect(likelihood(parameters)).toBeCloseTo(best, 9);
      for (const i of parameters.keys())
        for (const factor of [0.99, 1.01])
          expect(likelihood(parameters.map((value, j) => (i === j ? value * factor : value)))).toBeLessThan(best);
    }
  });

  it("count one far beyond all others as well", () => {
    const [, , far] = fitCensored({ complete: Float64Array.of(1, 1.01, 1.02), censored: Float64Array.of(1e9) });
    expect(far?.parameters.every((value) => Number.isFinite(value) && value > 0)).toBe(true);
    expect(far?.logLikelihood).toBeGreaterThan(-100);
  });

  it("have intervals about their parameters, the same for the same seed", () => {
    const times = { complete: sampleOf(exponential, [40], 25), censored: Float64Array.of(10) };
    for (const fit of fitCensored(times)) {
      const ranges = censoredRanges(fit, times, "seed");
      ranges.forEach(([low, high], i) => {
        expect(low).toBeLessThan(fit.parameters[i]!);
        expect(high).toBeGreaterThan(fit.parameters[i]!);
      });
      expect(censoredRanges(fit, times, "seed")).toEqual(ranges);
    }
    // The mean of 25 exponential times is uncertain by a factor of about 1 ± 2 / √25.
    const [fit] = fitCensored(times);
    const [[low, high] = [0, 0]] = censoredRanges(fit!, times, "seed");
    const mean = fit!.parameters[0]!;
    expect([low / mean, high / mean]).toEqual([expect.closeTo(0.7, 0), expect.closeTo(1.5, 0)]);
    expect(low / mean).toBeGreaterThan(0.55);
    expect(high / mean).toBeLessThan(1.8);
  });
});

describe("sums of a stream", () => {
  const momentsOf = (...values: readonly number[]) => {
    const moments = new Moments();
    for (const value of values) moments.add(value);
    return moments;
  };

  it("have mean, sd and ends", () => {
    // 2, 4, 9: mean 5, squares 9 + 1 + 16.
    const moments = momentsOf(2, 9, 4);
    expect([moments.count, moments.mean, moments.squares, moments.min, moments.max]).toEqual([3, 5, 26, 2, 9]);
    expect(moments.sd).toBeCloseTo(Math.sqrt(13), 12);
    expect([momentsOf(7).sd, momentsOf().sd]).toEqual([0, 0]);
  });

  it("are joined, also with nothing", () => {
    for (const [one, other] of [[[2], [9, 4]], [[2, 9, 4], []], [[], [2, 9, 4]]] as const) {
      const joined = momentsOf(...one);
      joined.join(momentsOf(...other));
      expect([joined.count, joined.mean, joined.squares, joined.min, joined.max]).toEqual([3, 5, 26, 2, 9]);
    } // prettier-ignore
  });

  it("have the correlation of one value and the next", () => {
    const of = (...values: readonly number[]) => {
      const lag = new Autocorrelation();
      for (const value of values) lag.add(value);
      return lag.value(momentsOf(...values));
    };
    // Deviations −3, 4, −1: (−12 − 4) / 26.
    expect(of(2, 9, 4)).toBeCloseTo(-16 / 26, 12);
    expect([of(2, 9), of(5, 5, 5)]).toEqual([undefined, undefined]);
  });

  it("have a straight line from three times on that are not one", () => {
    const of = (...points: readonly (readonly [number, number])[]) => {
      const trend = new Trend();
      for (const [time, value] of points) trend.add(time, value);
      return trend.slope();
    };
    expect(of([0, 1], [1, 2])).toBeUndefined();
    expect(of([5, 1], [5, 2], [5, 3])).toBeUndefined();
    expect(of([0, 1], [10, 3], [20, 5])).toEqual({ slope: 0.2, error: 0, span: 20 });
  });
});
