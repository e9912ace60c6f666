// Output, cycles and shares of time of a line, with their errors; all values by hand.
import { describe, expect, it } from "vitest";
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { allShots, anchorsOf, areSeenTogether, gapsOf } from "#analysis/match/deliveries.ts";
import { LineLog, type Stretch } from "#analysis/match/lineLog.ts";
import { cycleTimes, meansOf, shares, throughput } from "#analysis/match/measures.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

type Row = readonly [station: string, step: string, start: number, seconds: number];

function stretchOf(...rows: readonly Row[]): Stretch {
  const line = new LineLog();
  for (const [station, step, start, seconds] of rows) {
    line.take({ station, step, start, seconds, kind: "step", line: 1, run: "" } satisfies StepRecord);
  }
  return line.stretches()[0]!;
}

const dropsAt = (station: string, ...starts: readonly number[]) =>
  starts.map((start): Row => [station, "drop", start, 1]);
/** The last drop begins a second before the end. */
const every = (gaps: readonly number[], station = "A") => {
  const starts = gaps.reduce<number[]>((all, gap) => [...all, all.at(-1)! + gap], [0]);
  return stretchOf(...dropsAt(station, ...starts));
};
const anchor = (station: string, inLog = "drop", inModel = inLog) => ({ station, inLog, inModel });
const [ten, twenty] = [Array<number>(5).fill(10), Array<number>(5).fill(20)];

describe("the mean of a log", () => {
  it("is that of all values, with the error of batches of five", () => {
    // Means of two batches 10 and 20: mean 15, variance 50, error √(50 / 2).
    const { log, model } = meansOf([every([...ten, ...twenty])], [], cycleTimes(anchor("A")));
    expect(log).toEqual({ mean: 15, error: 5, freedom: 1 });
    expect(model).toBeUndefined();
    // Eleven values: batches of five and six, of which the mean of all is not that of the batches.
    const { log: eleven } = meansOf([every([...ten, ...twenty, 20])], [], cycleTimes(anchor("A")));
    expect(eleven).toEqual({ mean: expect.closeTo(170 / 11, 12) as number, error: 5, freedom: 1 });
  });

  it("goes over its stretches, and is unknown for fewer than ten values", () => {
    const series = cycleTimes(anchor("A"));
    expect(meansOf([every(ten), every(twenty)], [], series).log).toEqual({ mean: 15, error: 5, freedom: 1 });
    expect(meansOf([every(ten)], [], series).log).toBeUndefined();
  });

  it("of the model is that of its runs; a run without values has none", () => {
    const runs = [every([10, 10]), every([40]), stretchOf(...dropsAt("B", 0, 5)), every([])];
    expect(meansOf([], runs, cycleTimes(anchor("A"))).model).toEqual({ mean: 25, error: 15, freedom: 1 });
  });

  it("takes the step that stands for a shot in the log and in the model", () => {
    const cycles = (...starts: readonly number[]) => stretchOf(...starts.map((start): Row => ["A", "cycle", start, 1]));
    const log = Array.from({ length: 11 }, (_, i) => i * 30);
    const { log: logged, model } = meansOf([cycles(...log)], [every([10]), every([20])], cycleTimes(anchor("A", "cycle", "drop"))); // prettier-ignore
    expect([logged?.mean, model?.mean]).toEqual([30, 15]);
  });
});

describe("the output", () => {
  it("is the inverse of the mean time between two shots, with its error by the delta method", () => {
    // 3,600 / 15 = 240 an hour; 3,600 × 5 / 15² = 80.
    const found = throughput([every([...ten, ...twenty])], [every(ten), every(twenty)], [anchor("A")]);
    expect(found.log).toEqual({ mean: 240, error: 80, freedom: 1 });
    expect(found.model).toEqual({ mean: 240, error: 80, freedom: 1 });
  });

  it("counts the shots of all stations by their time", () => {
    const both = stretchOf(...dropsAt("A", 0, 10, 20), ...dropsAt("B", 4, 14));
    const shots = allShots(both, [anchor("A"), anchor("B")], "inLog");
    expect(shots.map(({ time }) => time)).toEqual([0, 4, 10, 14, 20]);
    expect(gapsOf(shots).map(({ sum, count }) => [sum, count])).toEqual([[4, 1], [6, 1], [4, 1], [6, 1]]); // prettier-ignore
    expect(throughput([], [], [anchor("A")])).toEqual({ log: undefined, model: undefined });
  });
});

describe("a share of time", () => {
  const isMeant = ({ name }: { readonly name: string }) => name === "cool";
  const cooled = (...rows: readonly Row[]) => stretchOf(["B", "open", 0, 1], ...rows, ["B", "open", 99, 1]);

  it("of a log is that of 20 batches, of which a step fills each as far as it lasts", () => {
    // 2 to 8 s of 100 s: 0.6 of the batches from 0 and from 5 s. Mean 0.06, squares 0.72 − 20 × 0.06².
    const { log } = shares([cooled(["A", "cool", 2, 6])], [], isMeant);
    expect(log).toEqual({ mean: expect.closeTo(0.06, 12) as number, error: expect.closeTo(Math.sqrt(0.648 / 19 / 20), 12) as number, freedom: 19 }); // prettier-ignore
    // The first half: ten batches of 1 and ten of 0.
    expect(shares([cooled(["A", "cool", 0, 50])], [], isMeant).log).toMatchObject({ mean: 0.5, error: expect.closeTo(Math.sqrt(5 / 19 / 20), 12) as number }); // prettier-ignore
  });

  it("begins with the stretch, also far from the start of the clock", () => {
    const late = stretchOf(["B", "open", 1000, 1], ["A", "cool", 1002, 6], ["B", "open", 1099, 1]);
    expect(shares([late], [], isMeant).log?.mean).toBeCloseTo(0.06, 12);
  });

  it("has fewer batches in each of several stretches, and one in each of many", () => {
    const stretch = cooled(["A", "cool", 0, 50]);
    expect(shares([stretch, stretch, stretch], [], isMeant).log).toMatchObject({ mean: 0.5, freedom: 17 });
    expect(shares(Array<Stretch>(21).fill(stretch), [], isMeant).log).toEqual({ mean: 0.5, error: 0, freedom: 20 });
  });

  it("of the model is that of its runs", () => {
    const runs = [cooled(["A", "cool", 10, 20]), cooled(["A", "cool", 10, 20], ["A", "cool", 50, 40])];
    // 0.2 and 0.6: mean 0.4, variance 0.08, error √(0.08 / 2).
    const { log, model } = shares([], runs, isMeant);
    expect(log).toBeUndefined();
    expect(model).toEqual({ mean: expect.closeTo(0.4, 12) as number, error: expect.closeTo(0.2, 12) as number, freedom: 1 }); // prettier-ignore
  });
});

describe("stations that are seen together", () => {
  const seen = (a: readonly [number, number], b: readonly [number, number]) =>
    areSeenTogether([stretchOf(...dropsAt("A", ...a), ...dropsAt("B", ...b))], [anchor("A"), anchor("B")]);

  it("are so for half of the time in which any is", () => {
    expect([seen([0, 100], [50, 100]), seen([0, 100], [0, 49]), seen([0, 100], [50, 150])]).toEqual([true, false, false]); // prettier-ignore
  });

  it("are those with two shots, in every stretch", () => {
    const anchors = [anchor("A"), anchor("B")];
    const once = stretchOf(...dropsAt("A", 0, 100), ...dropsAt("B", 500));
    const apart = stretchOf(...dropsAt("A", 0, 100), ...dropsAt("B", 500, 600));
    expect(areSeenTogether([once], anchors)).toBe(true);
    expect(areSeenTogether([once, apart], anchors)).toBe(false);
    expect(areSeenTogether([apart], [anchor("A")])).toBe(true);
  });
});

describe("what stands for a shot", () => {
  const plan = planCell(scenarioOf(cellText(2)));
  const of = (...rows: readonly Row[]) => anchorsOf(plan, [stretchOf(...rows)]);

  it("is the drop, else the close, else the first step that log and model have", () => {
    const all: readonly Row[] = [["station 1", "open", 3, 1], ["station 1", "cool", 2, 1], ["station 1", "close", 1, 1], ["station 1", "drop", 0, 1]]; // prettier-ignore
    const names = [0, 1, 2, 3].map((left) => of(...all.slice(0, 4 - left))[0]?.inLog);
    expect(names).toEqual(["drop", "close", "cool", "open"]);
  });

  it("is the drop of the model where the log has whole cycles", () => {
    expect(of(["station 2", "cycle", 0, 1])).toEqual([{ station: "station 2", inLog: "cycle", inModel: "drop" }]);
    expect(of(["station 1", "drop", 0, 1], ["station 1", "cycle", 0, 1], ["station 2", "other", 5, 1])).toEqual([{ station: "station 1", inLog: "drop", inModel: "drop" }]); // prettier-ignore
  });
});
