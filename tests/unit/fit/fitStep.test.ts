// Suggestions of a fit and warnings about the order of times.
import alea from "seedrandom/lib/alea.js";
import { describe, expect, it } from "vitest";
import { fitStep } from "#analysis/fit/candidates.ts";
import { gamma } from "#analysis/fit/gammaFamily.ts";
import { normal } from "#analysis/fit/plainFamilies.ts";
import { Series, keptValues } from "#analysis/fit/series.ts";
import { Runs, Stops, fitTimes } from "#analysis/fit/stops.ts";
import { testFit } from "#analysis/fit/bootstrap.ts";

const noise = (seed: string, mean = 8, sd = 0.5) => normal.sampler([mean, sd], alea(seed));

function summaryOf(values: readonly number[], hours?: readonly number[]) {
  const series = new Series("test");
  values.forEach((value, i) => series.add(value, i * 10, hours?.[i]));
  return series.summary();
}

const suggestionOf = (values: readonly number[]) => fitStep(summaryOf(values), "test").suggestion;
const many = <Item>(count: number, item: (i: number) => Item) => Array.from({ length: count }, (_, i) => item(i));

describe("the suggestion", () => {
  it("is a constant for a timer, in spite of single other values", () => {
    const values = many(300, (i) => (i === 100 ? 12 : 7.5 + (i % 3) * 0.005));
    expect(suggestionOf(values)?.distribution).toMatchObject({ kind: "fixed", value: expect.closeTo(7.505, 3) });
    expect(suggestionOf(values)?.reason).toBe(
      "a timer: the values lie within 5 ms of the median; 1 other value is not in it",
    );
  });

  it("is a constant where the log's last digit is the whole spread", () => {
    const found = suggestionOf(many(50, (i) => (i % 2 === 0 ? 7.5 : 7.6)));
    expect(found?.distribution.kind).toBe("fixed");
    expect(found?.reason).toBe("the values lie within one digit of the log, 0.1 s, so that it shows no spread");
    expect(suggestionOf(many(50, (i) => (i % 2 === 0 ? 1 : 2)))?.distribution.kind).not.toBe("fixed");
  });

  it("is the measured values where no distribution passes", () => {
    const low = noise("low", 7, 0.1);
    const high = noise("high", 9, 0.1);
    const found = suggestionOf(many(300, (i) => (i % 2 === 0 ? low() : high())));
    expect(found?.distribution.kind).toBe("empirical");
    expect(found?.reason).toContain("no distribution passes Anderson-Darling");
  });

  it("is the measured values for fewer than 20, and nothing for fewer than 3", () => {
    expect(suggestionOf([7, 8, 9.5])?.distribution).toEqual({ kind: "empirical", values: [7, 8, 9.5] });
    expect(suggestionOf([7, 8])).toBeUndefined();
  });

  it("never has a normal distribution that often lies below 0", () => {
    const next = noise("near zero", 1, 0.6);
    const values = many(400, next).filter((value) => value > 0);
    const { candidates, suggestion } = fitStep(summaryOf(values), "test");
    expect(candidates.find(({ kind }) => kind === "normal")?.unfit).toContain("below 0");
    expect(suggestion?.distribution.kind).not.toBe("normal");
  });

  it("takes the digits of the log into account", () => {
    // Rounded to half a standard deviation the values have many ties, which a test for exact values rejects.
    const next = noise("rounded");
    const sorted = Float64Array.from(many(400, () => Math.round(next() * 4) / 4)).toSorted();
    expect(testFit(normal, sorted, "test", 0)!.kolmogorovSmirnovP).toBeLessThan(0.01);
    expect(testFit(normal, sorted, "test", 0.25)!.kolmogorovSmirnovP).toBeGreaterThan(0.05);
  });
});

describe("warnings of a series", () => {
  it("are absent for independent times", () => {
    expect(summaryOf(many(500, noise("plain"))).warnings).toEqual([]);
  });

  it("name a drift", () => {
    const next = noise("drift");
    const { warnings, drift } = summaryOf(many(500, (i) => next() + i * 0.002));
    expect(warnings.join()).toMatch(/it drifts by 1(?:\.\d)? ± 0\.\d+ s over the log/u);
    expect(Math.abs(drift!.value - 1)).toBeLessThan(2 * drift!.halfWidth);
  });

  it("name times in turn, and a time far beyond the others", () => {
    const next = noise("turn", 1, 0.02);
    const inTurn = new Series("turn");
    for (let i = 0; i < 100; i++) inTurn.add(i % 2 === 0 ? next() : 2 * next(), undefined, undefined);
    expect(inTurn.summary().warnings).toEqual([expect.stringContaining("come in turn")]);
    const slip = summaryOf([...many(100, next), 75]);
    expect(slip.warnings[0]).toBe("its longest time, 75 s, is 75 times the median; correct the log if it is a slip");
  });

  it("name an autocorrelation", () => {
    const next = noise("correlated", 0, 0.5);
    let last = 0;
    const { autocorrelation, warnings } = summaryOf(many(1000, () => 8 + (last = 0.7 * last + next())));
    expect(Math.abs(autocorrelation!.value - 0.7)).toBeLessThan(2 * autocorrelation!.halfWidth);
    expect(warnings.join()).toContain("one value and the next are correlated (0.");
  });

  it("name a shift that takes longer", () => {
    const next = noise("shifts");
    const hours = many(600, (i) => Math.floor(i / 2) % 24);
    const values = hours.map((hour) => next() + (hour >= 22 || hour < 6 ? 0.6 : 0));
    expect(summaryOf(values, hours).warnings).toEqual([
      expect.stringMatching(/^22 to 06 h takes 0\.\d+ ± 0\.\d+ s longer than 06 to 14 h$/u),
      expect.stringMatching(/^22 to 06 h takes 0\.\d+ ± 0\.\d+ s longer than 14 to 22 h$/u),
    ]);
  });
});

describe("a long series", () => {
  it("keeps a part of its values, in their order, and exact moments of all", () => {
    const count = 3 * keptValues;
    const { values, count: all, mean } = summaryOf(many(count, (i) => i + 1));
    expect([all, values.length, mean]).toEqual([count, keptValues, (count + 1) / 2]);
    expect(values.every((value, i) => i === 0 || value > values[i - 1]!)).toBe(true);
    // A random part has the middle of the whole.
    expect(Math.abs(values[keptValues / 2]! - count / 2)).toBeLessThan(0.02 * count);
  });
});

describe("stops", () => {
  it("have the times from one end to the next start, and the rest of each run as a censored one", () => {
    const [stops, runs] = [new Stops("test"), new Runs()];
    const record = (start: number, seconds: number, run: string) => {
      return { station: "P", step: "stopped", kind: "stop", seconds, start, run, line: 1 } as const;
    };
    for (const each of [record(100, 10, "1"), record(200, 20, "1"), record(50, 5, "2")]) {
      stops.add(each);
      runs.add(each);
    }
    runs.add({ ...record(400, 50, "1"), kind: "step" });
    const { complete, censored } = stops.between(runs);
    expect([[...complete], [...censored]]).toEqual([[90], [230]]);
  });

  it("are exponential where only few are known", () => {
    const next = gamma.sampler([40, 5], alea("few"));
    const fit = fitTimes({ complete: Float64Array.from(many(3, next)), censored: Float64Array.of(10) }, "test");
    expect(fit.suggestion?.distribution.kind).toBe("exponential");
    expect(fit.suggestion?.reason).toBe("only 3 complete times, 1 cut off by the log's end: no more than a mean");
  });
});
