// Which families a scenario may have, in which order they are tried, and what is suggested; all values by hand.
import { describe, expect, it } from "vitest";
import { fitFamilies, fitStep, thinned, type StepValues } from "#analysis/fit/candidates.ts";
import { families } from "#analysis/fit/families.ts";
import type { Family, FittedKind } from "#analysis/fit/family.ts";
import { normal, uniform } from "#analysis/fit/plainFamilies.ts";

const many = <Item>(count: number, item: (i: number) => Item) => Array.from({ length: count }, (_, i) => item(i));
const sortedOf = (...values: readonly number[]) => Float64Array.from(values).toSorted();

/** A family whose fit always gives these parameters, and whose values all have this logarithm of the density. */
function fixed(kind: FittedKind, parameters: readonly number[], logDensity = -1): Family {
  const family = families.find((each) => each.kind === kind)!;
  return { ...family, fit: () => parameters, logDensity: () => () => logDensity };
}

const unfitOf = (kind: FittedKind, ...parameters: readonly number[]) =>
  fitFamilies(sortedOf(1, 2, 3), [fixed(kind, parameters)])[0]?.candidate.unfit;

describe("what a scenario cannot have", () => {
  it.each<[FittedKind, readonly number[], readonly number[], string]>([
    ["normal", [3, 1], [2.9, 1], "more than 0.1 % of its draws would be below 0"],
    ["weibull", [1, 0.5], [1, 0.49], "its shape is outside 0.5 to 20"],
    ["weibull", [1, 20], [1, 20.1], "its shape is outside 0.5 to 20"],
    ["gamma", [10, 14.1], [10, 14.2], "its sd is more than 1.414 times the mean"],
    ["lognormal", [1, 10], [1, 10.1], "its sd is more than 10 times the mean"],
    ["triangular", [0, 1, 2], [-0.1, 1, 2], "its min is below 0"],
    ["uniform", [0, 2], [-0.1, 2], "its min is below 0"],
  ])("is a %s beyond its limit: %j, but not %j", (kind, within, beyond, reason) => {
    expect([unfitOf(kind, ...within), unfitOf(kind, ...beyond)]).toEqual([undefined, reason]);
  });

  it("is no other limit", () => {
    expect([unfitOf("exponential", 0.1), unfitOf("gamma", 1, 0.1), unfitOf("lognormal", 0.1, 0.01)]).toEqual(
      many(3, () => undefined),
    );
  });
});

describe("the families by Akaike's criterion", () => {
  it("have 2 for each parameter less twice the logarithm of the likelihood, the smallest first", () => {
    // Three values: 2 × 2 + 2 × 3 × 1 = 10, 2 × 3 + 2 × 3 × 0.5 = 9, 2 × 1 + 2 × 3 × 2 = 14.
    const found = fitFamilies(sortedOf(1, 2, 3), [fixed("exponential", [2], -2), fixed("normal", [9, 1]), fixed("triangular", [1, 2, 3], -0.5)]); // prettier-ignore
    expect(found.map(({ candidate: { kind, aic, logLikelihood } }) => [kind, aic, logLikelihood])).toEqual([
      ["triangular", 9, -1.5],
      ["normal", 10, -3],
      ["exponential", 14, -6],
    ]);
  });

  it("leave out what cannot be fitted", () => {
    const none: Family = { ...normal, fit: () => undefined };
    const found = fitFamilies(sortedOf(1, 2), [none, fixed("normal", [NaN, 1]), fixed("weibull", [1, 1], -Infinity)]);
    expect(found).toEqual([]);
  });
});

describe("evenly spaced values", () => {
  it("are the middles of equal parts, and all where there are no more", () => {
    const ten = Float64Array.from(many(10, (i) => i));
    expect([...thinned(ten, 5)]).toEqual([1, 3, 5, 7, 9]);
    expect([...thinned(ten, 4)]).toEqual([1, 3, 6, 8]);
    expect(thinned(ten, 10)).toBe(ten);
  });
});

const stepOf = (values: readonly number[], resolution = 0): StepValues => {
  const sorted = sortedOf(...values);
  return { sorted, mean: 0, sd: 1, resolution };
};
const suggestionOf = (values: readonly number[], resolution?: number) =>
  fitStep(stepOf(values, resolution), "test").suggestion;

describe("a timer", () => {
  const reasonOf = (values: readonly number[], resolution?: number) => suggestionOf(values, resolution)?.reason;

  it("has nearly all values within half a percent of the median", () => {
    expect(suggestionOf([10, 10, 10])).toEqual({
      distribution: { kind: "fixed", value: 10 },
      reason: "a timer: the values are equal",
    });
    expect(reasonOf([9.95, 10, 10.05])).toBe("a timer: the values lie within 50 ms of the median");
    expect(reasonOf([9.94, 10, 10.05])).not.toContain("timer");
    // 98 of 100, but not 97; one is a slip on either side, and two are not.
    const others = (short: number, long: number) => [
      ...many(short, () => 1),
      ...many(100 - short - long, () => 10),
      ...many(long, () => 50),
    ];
    expect(suggestionOf(others(1, 1))).toEqual({
      distribution: { kind: "fixed", value: 10 },
      reason: "a timer: the values are equal; 2 other values are not in it",
    });
    expect(reasonOf(others(0, 1))).toContain("; 1 other value is not in it");
    expect(reasonOf(others(1, 0))).toContain("; 1 other value is not in it");
    for (const [short, long] of [[2, 0], [0, 2], [1, 2]] as const) expect(reasonOf(others(short, long))).not.toContain("timer"); // prettier-ignore
    // Of 200 values two on either side are, but only four of all.
    const more = (short: number, long: number) => [...others(short, long), ...many(100, () => 10)];
    expect(reasonOf(more(2, 2))).toContain("; 4 other values are not in it");
    expect(reasonOf(more(2, 3))).not.toContain("timer");
  });

  it("has the mean of those", () => {
    // 49 values of 10 and 50 of 10.04 beside one of 12: (490 + 502) / 99.
    const values = [...many(49, () => 10), ...many(50, () => 10.04), 12];
    expect(suggestionOf(values)?.distribution).toEqual({ kind: "fixed", value: expect.closeTo(992 / 99, 9) as number });
  });

  it("may be as coarse as the digits of the log, up to a tenth of the median", () => {
    expect(reasonOf([7, 8, 7, 8, 8], 1)).not.toContain("digit");
    expect(reasonOf([10, 11, 10, 11, 11], 1)).toBe(
      "the values lie within one digit of the log, 1 s, so that it shows no spread",
    );
    expect(reasonOf([10, 11, 10, 11, 11], 0.5)).not.toContain("digit");
  });
});

describe("the suggestion", () => {
  it("is the values themselves below 20, in rising order, and nothing below 3", () => {
    const nineteen = many(19, (i) => 10 + ((i * 7) % 19));
    expect(suggestionOf(nineteen)).toEqual({
      distribution: { kind: "empirical", values: many(19, (i) => 10 + i) },
      reason: "19 values are too few to choose a distribution; measure 20 or more",
    });
    expect(fitStep(stepOf([1, 9]), "test")).toEqual({ candidates: [] });
    expect(fitStep(stepOf(many(20, (i) => 10 + i)), "test").candidates.length).toBeGreaterThan(3);
  });

  /** Twenty values between 1 and 2 at the middles of equal parts: uniform to the letter. */
  const even = many(20, (i) => 1 + (i + 0.5) / 20);

  it("is the first of the three smallest that passes", () => {
    // A normal distribution far off never passes; a uniform one between the outermost values does.
    const wrong = fixed("normal", [100, 1], 1);
    const fit = fitStep(stepOf(even), "test", [uniform, wrong]);
    expect(fit.candidates.map(({ kind }) => kind)).toEqual(["normal", "uniform"]);
    expect(fit.suggestion?.distribution).toEqual({ kind: "uniform", min: 1.025, max: 1.975 });
    expect(fit.suggestion?.reason).toMatch(/^smallest AIC of those that pass \(normal fails\); Anderson-Darling p = [\d.]+$/u); // prettier-ignore
    const [far, own] = fit.candidates;
    expect(far?.tests?.andersonDarlingP).toBe(1 / 200);
    expect([far?.ranges, own?.ranges?.length]).toEqual([undefined, 2]);
    const alone = fitStep(stepOf(even), "test", [uniform]);
    expect(alone.suggestion?.reason).toMatch(/^smallest AIC; Anderson-Darling p = /u);
  });

  it("is none behind three that fail, nor one that a scenario cannot have", () => {
    const wrong = (kind: FittedKind, place: number) => fixed(kind, [100, 1, 101], 5 - place);
    const three = [wrong("normal", 0), wrong("lognormal", 1), wrong("gamma", 2)];
    const found = fitStep(stepOf(even), "test", [...three, uniform]);
    expect(found.suggestion?.distribution).toEqual({ kind: "empirical", values: even });
    expect(found.suggestion?.reason).toBe(
      "no distribution passes Anderson-Darling (best p = 0.005); the measured values stand for themselves",
    );
    expect(found.candidates.map(({ tests }) => tests !== undefined)).toEqual([true, true, true, false]);
    // One of them that is unfit is not tried, so that the fourth is.
    const unfit = [...three.slice(0, 2), fixed("weibull", [1, 0.1], 3), uniform];
    expect(fitStep(stepOf(even), "test", unfit).suggestion?.distribution.kind).toBe("uniform");
    expect(fitStep(stepOf(even), "test", [fixed("weibull", [1, 0.1])]).suggestion?.reason).toBe(
      "no distribution of a scenario can have such values; the measured values stand for themselves",
    );
  });

  it("has at most 50 of the measured values", () => {
    const values = many(100, (i) => 1 + i);
    const { suggestion } = fitStep(stepOf(values), "test", [fixed("weibull", [1, 0.1])]);
    expect(suggestion?.distribution).toEqual({ kind: "empirical", values: many(50, (i) => 2 + 2 * i) });
  });
});
