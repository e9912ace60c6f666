// What is collected of a log and fitted: series, repairs and times between stops; all values by hand.
import alea from "seedrandom/lib/alea.js";
import { describe, expect, it } from "vitest";
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { LogCollector } from "#analysis/fit/logFit.ts";
import { normal } from "#analysis/fit/plainFamilies.ts";
import { Series } from "#analysis/fit/series.ts";
import { Runs, Stops, fitTimes } from "#analysis/fit/stops.ts";

const many = <Item>(count: number, item: (i: number) => Item) => Array.from({ length: count }, (_, i) => item(i));

const seriesOf = (values: readonly number[], hours?: readonly number[]) => {
  const series = new Series("test");
  values.forEach((value, i) => series.add(value, i * 10, hours?.[i]));
  return series.summary();
};

describe("a series", () => {
  it("has its moments, its values in order and sorted", () => {
    const { count, mean, sd, min, max, values, sorted } = seriesOf([2, 9, 4]);
    expect([count, mean, min, max, [...values], [...sorted]]).toEqual([3, 5, 2, 9, [2, 9, 4], [2, 4, 9]]);
    expect(sd).toBeCloseTo(Math.sqrt(13), 12);
  });

  it("has its correlation and drift with 95 % intervals", () => {
    // 2, 4, 5, 4, 5 at 0 to 40 s: slope 0.06, error √(2.4 / 3 / 1,000); deviations −2, 0, 1, 0, 1, products 0.
    const { autocorrelation, drift } = seriesOf([2, 4, 5, 4, 5]);
    expect(autocorrelation).toEqual({ value: expect.closeTo(0, 12) as number, halfWidth: expect.closeTo(1.959964 / Math.sqrt(5), 6) as number }); // prettier-ignore
    expect(drift).toEqual({ value: expect.closeTo(2.4, 9) as number, halfWidth: expect.closeTo(1.959964 * Math.sqrt(0.8 / 1000) * 40, 5) as number }); // prettier-ignore
    expect(seriesOf([2, 4])).not.toHaveProperty("drift");
    expect(seriesOf([2, 4])).not.toHaveProperty("autocorrelation");
  });

  it("counts correlated values for fewer", () => {
    // 1, 1, 2, 2: deviations ∓0.5, r = (0.25 − 0.25 + 0.25) / 1 = 1 / 4, so that errors grow by √(1.25 / 0.75).
    const { autocorrelation, drift } = seriesOf([1, 1, 2, 2]);
    expect(autocorrelation?.value).toBeCloseTo(0.25, 12);
    // Slope 0.04, rest 1 − 0.04 × 20 = 0.2, squares of times 500; span 30 s.
    expect(drift?.halfWidth).toBeCloseTo(1.959964 * Math.sqrt(0.2 / 2 / 500) * 30 * Math.sqrt(1.25 / 0.75), 5);
  });

  it.each([
    [[60, 120], 60],
    [[10, 30], 10],
    [[5, 10], 5],
    [[2, 4, 10], 2],
    [[1, 2], 1],
    [[7.5, 8], 0.5],
    [[7.2, 8.4], 0.2],
    [[7.1, 8.4], 0.1],
    [[7.25, 8.1], 0.05],
    [[7.01, 8.5], 0.01],
    [[7.02, 8.5], 0.02],
    [[7.005, 8.5], 0.005],
    [[7.002, 8.5], 0.002],
    [[7.001, 8.5], 0.001],
    [[7.0001, 8.5], 1e-4],
    [[7.000_01, 8.5], 1e-5],
    [[7.000_001, 8.5], 0],
  ])("%j has the resolution %d s", (values, resolution) => {
    expect(seriesOf(values).resolution).toBe(resolution);
  });

  const warningsOf = (values: readonly number[], hours?: readonly number[]) => seriesOf(values, hours).warnings;

  it("warns of a time above 20 times the median", () => {
    expect(warningsOf([1, 1, 20])).toEqual([]);
    expect(warningsOf([1, 1, 21])).toEqual([
      "its longest time, 21 s, is 21 times the median; correct the log if it is a slip",
    ]);
  });

  it("warns of a correlation and a drift from 20 values on", () => {
    const rising = (count: number) => many(count, (i) => 10 + i * 0.1 + (i % 3) * 0.01);
    expect(warningsOf(rising(19))).toEqual([]);
    expect(warningsOf(rising(20))).toEqual([
      expect.stringMatching(/^one value and the next are correlated \(0\.8\d?\), which a drawn time is not$/u),
      expect.stringMatching(/^it drifts by 1\.9 ± 0\.0\d+ s over the log$/u),
    ]);
    // −99 / 100 of equal deviations.
    expect(warningsOf(many(100, (i) => 10 + (i % 2)))).toEqual([
      "long and short times come in turn (correlation -0.99), as where it serves stations or products in turn; fit those apart",
    ]);
  });

  it("warns of no drift below one percent of the mean", () => {
    const next = normal.sampler([0, 0.001], alea("drift"));
    const drifting = (by: number) => many(200, (i) => 10 + (by * i) / 199 + next());
    const drifts = (by: number) => warningsOf(drifting(by)).filter((each) => each.startsWith("it drifts"));
    expect([drifts(0.09).length, drifts(0.11).length]).toEqual([0, 1]);
  });

  it("tells shifts by their hours", () => {
    const next = normal.sampler([0, 0.01], alea("shifts"));
    const longer = (hour: number, other: number) => {
      const hours = many(40, (i) => (i % 2 === 0 ? hour : other));
      return warningsOf(hours.map((each) => 10 + (each === hour ? 1 : 0) + next()), hours).filter((each) => each.includes("longer")); // prettier-ignore
    };
    const name = (texts: readonly string[]) => texts.map((text) => text.replace(/takes .* longer than/u, ">"));
    expect(name(longer(6, 14))).toEqual(["06 to 14 h > 14 to 22 h"]);
    expect(name(longer(13, 22))).toEqual(["06 to 14 h > 22 to 06 h"]);
    expect(name(longer(14, 5))).toEqual(["14 to 22 h > 22 to 06 h"]);
    expect(name(longer(21, 0))).toEqual(["14 to 22 h > 22 to 06 h"]);
    expect(longer(7, 13)).toEqual([]);
    // 1 s; 2.394 × √(2 × 0.01² / 20) is 0.0076 s, up to the spread of 20 values.
    expect(longer(6, 14)[0]).toMatch(/^06 to 14 h takes (?:1|0\.99) ± 0\.00[5-9]\d* s longer than 14 to 22 h$/u);
  });

  it("tells no shifts apart by less than one percent, nor by single values", () => {
    const next = normal.sampler([0, 0.001], alea("small"));
    const hours = many(200, (i) => (i % 2 === 0 ? 8 : 16));
    const of = (by: number) => warningsOf(hours.map((hour) => 10 + (hour === 8 ? by : 0) + next()), hours).filter((each) => each.includes("longer")); // prettier-ignore
    expect([of(0.09).length, of(0.11).length]).toEqual([0, 1]);
    expect(warningsOf([10, 10.1, 10, 15], [8, 8, 8, 16])).toEqual([]);
  });
});

const stop = (start: number | undefined, seconds: number, run = "") => ({
  station: "P",
  step: "stopped",
  kind: "stop" as const,
  seconds,
  run,
  line: 1,
  ...(start === undefined ? {} : { start }),
});

describe("the times between stops", () => {
  it("leave out stops that overlap or have no time, and a rest of nothing", () => {
    const [stops, runs] = [new Stops("test"), new Runs()];
    for (const each of [stop(0, 10), stop(5, 10), stop(undefined, 7), stop(15, 5), stop(30, 5)]) {
      stops.add(each);
      runs.add(each);
    }
    const { complete, censored } = stops.between(runs);
    // From 20 to 30 s alone: a stop at the end of another has no time before it.
    expect([[...complete], [...censored], stops.repairs().count]).toEqual([[10], [], 5]);
  });

  it("are fitted by a mean below five, and by the smallest criterion from five on", () => {
    const fitOf = (complete: readonly number[], censored: readonly number[] = []) =>
      fitTimes({ complete: Float64Array.from(complete), censored: Float64Array.from(censored) }, "test");
    expect(fitOf([7], [5]).suggestion).toEqual({
      distribution: { kind: "exponential", mean: 12 },
      reason: "only 1 complete time, 1 cut off by the log's end: no more than a mean",
    });
    expect(fitOf([10, 10.5, 11, 11.5]).suggestion?.reason).toBe("only 4 complete times: no more than a mean");
    const five = fitOf([10, 10.5, 11, 11.5, 12]);
    expect(five.suggestion?.reason).toBe("smallest AIC of 5 complete times");
    expect(five.suggestion?.distribution.kind).not.toBe("exponential");
    const aics = five.candidates.map(({ aic }) => aic);
    expect(aics).toEqual(aics.toSorted((one, other) => one - other));
    expect(five.candidates.map(({ ranges }) => ranges !== undefined).filter(Boolean)).toHaveLength(1);
    for (const { aic, parameters, logLikelihood } of five.candidates)
      expect(aic).toBeCloseTo(2 * parameters.length - 2 * logLikelihood, 9);
    expect(fitOf([])).toEqual({ candidates: [] });
  });

  it("are never a Weibull distribution beyond the limits of a scenario", () => {
    // Nearly equal times have a shape far above 20; times of many sizes one below 0.5.
    for (const complete of [many(10, (i) => 100 + i * 0.1), many(12, (i) => 10 ** (i - 5))]) {
      const fit = fitTimes({ complete: Float64Array.from(complete), censored: new Float64Array(0) }, "test");
      expect(fit.candidates.find(({ kind }) => kind === "weibull")?.unfit).toBe("its shape is outside 0.5 to 20");
      expect(fit.suggestion?.distribution.kind).toBe("lognormal");
    }
    const plain = fitTimes({ complete: Float64Array.of(5, 8, 12, 20, 31), censored: new Float64Array(0) }, "test");
    expect(plain.candidates.map(({ unfit }) => unfit)).toEqual([undefined, undefined, undefined]);
  });
});

describe("a collected log", () => {
  const collect = (records: readonly StepRecord[]) => {
    const collector = new LogCollector();
    for (const record of records) collector.take(record);
    return collector;
  };
  const step = (station: string, name: string, seconds: number, start = 0): StepRecord => {
    return { station, step: name, kind: "step", seconds, start, run: "", line: 1 };
  };

  it("has the steps in the order of stations and names, then repairs and the times between them", () => {
    const records: StepRecord[] = [step("B", "cool", 7), step("A", "open", 1), step("A", "cool", 8), step("B", "cool", 8)]; // prettier-ignore
    for (let i = 0; i < 7; i++) records.push(stop(1000 * i + 2 * i * i, 60 + i * 10));
    records.push({ ...step("A", "cool", 8, 7500), kind: "step" });
    const collector = collect(records);
    const fits = [...collector.fits()];
    expect(fits.map(({ station, step: name, kind, summary }) => [station, name, kind, summary.count])).toEqual([
      ["A", "cool", "step", 2],
      ["A", "open", "step", 1],
      ["B", "cool", "step", 2],
      ["P", "stopped", "repair", 7],
      ["P", "stopped", "between", 6],
    ]);
    expect(collector.count).toBe(4);
    expect(fits.map(({ censored }) => censored)).toEqual([0, 0, 0, 0, 1]);
    expect(fits.map(({ suggestion }) => suggestion !== undefined)).toEqual([false, false, false, true, true]);
    // Repairs below 20 by their likelihood alone; as values they would be too few.
    expect(fits[3]?.suggestion?.reason).toBe("smallest AIC of 7 complete times");
    expect(fits[4]?.suggestion?.reason).toBe("smallest AIC of 6 complete times, 1 cut off by the log's end");
    // The sixth ends at 5,050 + 110 s, and the last one begins at 6,072 s.
    expect(fits[4]?.summary.min).toBe(912);
  });

  it("tests repairs from 20 on, and has none of a single one", () => {
    const reasonOf = (count: number) =>
      [...collect(many(count, (i) => stop(i * 1000, 60 + ((i * 37) % 40)))).fits()][0]?.suggestion?.reason;
    expect(reasonOf(19)).toBe("smallest AIC of 19 complete times");
    expect(reasonOf(20)).toContain("Anderson-Darling");
    expect([reasonOf(2), reasonOf(1)]).toEqual(["only 2 complete times: no more than a mean", undefined]);
  });

  it("counts waits by their name", () => {
    const wait = (name: string): StepRecord => ({ ...step("A", name, 3), kind: "wait" });
    const collector = collect([wait("idle"), wait("blocked"), wait("idle")]);
    expect([[...collector.waits], collector.count]).toEqual([[["idle", 2], ["blocked", 1]], 0]); // prettier-ignore
  });

  it("has at most 500 steps, and about as many waits", () => {
    const of = (count: number, kind: StepRecord["kind"]) =>
      collect(many(count, (i) => ({ ...step("A", `part ${i}`, 7), kind })));
    expect([of(500, "step").isTooWide, of(500, "step").count]).toEqual([false, 500]);
    expect([of(501, "step").isTooWide, of(501, "step").count]).toEqual([true, 500]);
    expect([of(500, "wait").isTooWide, of(502, "wait").isTooWide]).toEqual([false, true]);
  });
});
