// Intervals, tests and suggestions over synthetic samples with known distributions.
import alea from "seedrandom/lib/alea.js";
import { describe, expect, it } from "vitest";
import { parameterRanges, testFit } from "#analysis/fit/bootstrap.ts";
import { fitFamilies } from "#analysis/fit/candidates.ts";
import { censoredRanges, fitCensored } from "#analysis/fit/censored.ts";
import { families } from "#analysis/fit/families.ts";
import { isLong } from "../../support/caseCount.ts";

const truths: Readonly<Record<string, readonly number[]>> = {
  normal: [7.5, 0.3],
  lognormal: [12, 4],
  gamma: [0.85, 0.2],
  weibull: [40, 1.5],
  exponential: [3],
  triangular: [7, 7.5, 9],
  uniform: [7, 8],
};
const named = families.map((family) => ({ family, kind: family.kind, truth: truths[family.kind]! }));
const logs = isLong ? 1000 : 10;
/** Three standard errors of a share beyond the stated limits. */
const margin = (share: number): number => 3 * Math.sqrt((share * (1 - share)) / logs);

const sampleOf = (index: number, sampler: (typeof families)[number]["sampler"], truth: readonly number[], n: number) =>
  Float64Array.from({ length: n }, sampler(truth, alea(`log ${index}`))).toSorted();

describe.each(named)("over synthetic logs of $kind", ({ family, truth }) => {
  it("95 % intervals cover the truth in 93 to 97 % of them", { timeout: 3_600_000 }, () => {
    const hits = truth.map(() => 0);
    for (let i = 0; i < logs; i++) {
      const sorted = sampleOf(i, family.sampler, truth, 100);
      const ranges = parameterRanges(family, family.fit(sorted)!, sorted, `log ${i}`);
      ranges.forEach(([low, high], place) => {
        if (low <= truth[place]! && truth[place]! <= high) hits[place]! += 1;
      });
    }
    for (const hit of hits) {
      expect(hit / logs).toBeGreaterThan(0.93 - margin(0.95));
      expect(hit / logs).toBeLessThan(0.97 + margin(0.95));
    }
  });

  it("both tests reject the true family in 4 to 6 % of them", { timeout: 3_600_000 }, () => {
    let [andersonDarling, kolmogorovSmirnov] = [0, 0];
    for (let i = 0; i < logs; i++) {
      const sorted = sampleOf(i, family.sampler, truth, 50);
      const found = testFit(family, sorted, `log ${i}`)!;
      if (found.andersonDarlingP <= 0.05) andersonDarling += 1;
      if (found.kolmogorovSmirnovP <= 0.05) kolmogorovSmirnov += 1;
    }
    for (const rejected of [andersonDarling, kolmogorovSmirnov]) {
      expect(rejected / logs).toBeGreaterThanOrEqual(0.04 - margin(0.05));
      expect(rejected / logs).toBeLessThan(0.06 + margin(0.05));
    }
  });
});

/** Kullback-Leibler distance a value, in natural units, above which families differ clearly in 200 values. */
const clearDistance = 0.03;

describe("the smallest AIC at n = 200", () => {
  const count = isLong ? 1000 : 50;

  it.each([
    ["lognormal", [12, 12]],
    ["weibull", [1, 12]],
    ["weibull", [1, 20]],
    ["triangular", [7, 7.5, 9]],
    ["triangular", [7, 7.1, 9]],
    ["uniform", [7, 8]],
    ["uniform", [1, 8]],
  ] as const)("is that of %s %j in 90 %% of the samples, since no other family is near", (kind, truth) => {
    const family = families.find((each) => each.kind === kind)!;
    const many = fitFamilies(sampleOf(0, family.sampler, truth, 20_000)).map(({ candidate }) => candidate);
    const likelihoods = many.toSorted((one, other) => other.logLikelihood - one.logLikelihood);
    const own = many.find((candidate) => candidate.kind === kind)!;
    const nearest = likelihoods.find((candidate) => candidate.kind !== kind)!;
    expect((own.logLikelihood - nearest.logLikelihood) / 20_000).toBeGreaterThan(clearDistance);
    const right = Array.from({ length: count }, (_, i) => {
      const sorted = sampleOf(i, family.sampler, truth, 200);
      return fitFamilies(sorted)[0]!.candidate.kind === kind;
    }).filter(Boolean).length;
    expect(right / count).toBeGreaterThanOrEqual(0.9);
  });
});

describe("censored times between stops", () => {
  it("have unbiased means and covering intervals", { timeout: 3_600_000 }, () => {
    const [truth, until] = [40, 800];
    const draw = alea("stops");
    const next = families.find(({ kind }) => kind === "exponential")!.sampler([truth], draw);
    let [sum, squares, hits] = [0, 0, 0];
    for (let i = 0; i < logs; i++) {
      const complete: number[] = [];
      let left = until;
      for (let time = next(); time < left; time = next()) {
        complete.push(time);
        left -= time;
      }
      const times = { complete: Float64Array.from(complete), censored: Float64Array.of(left) };
      const fit = fitCensored(times).find(({ family }) => family.kind === "exponential")!;
      const rate = 1 / fit.parameters[0]!;
      sum += rate;
      squares += rate * rate;
      const [[low, high] = [0, 0]] = censoredRanges(fit, times, `stops ${i}`);
      if (low <= truth && truth <= high) hits += 1;
    }
    const mean = sum / logs;
    const error = Math.sqrt((squares / logs - mean * mean) / logs);
    expect(Math.abs(mean - 1 / truth)).toBeLessThan(3.3 * error);
    expect(hits / logs).toBeGreaterThan(0.93 - margin(0.95));
    expect(hits / logs).toBeLessThan(0.97 + margin(0.95));
  });
});
