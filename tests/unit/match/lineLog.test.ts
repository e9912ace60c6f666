// What is kept of a line: the times of each step, alone or in sums, and the stretches of a log; all values by hand.
import { describe, expect, it } from "vitest";
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { Doing } from "#analysis/match/doing.ts";
import { doingKey, LineLog } from "#analysis/match/lineLog.ts";
import { TracedPart } from "#analysis/match/tracedPart.ts";

const record = (station: string, step: string, start: number, seconds: number, more: Partial<StepRecord> = {}) =>
  ({ station, step, kind: "step", start, seconds, line: 1, run: "", ...more }) satisfies StepRecord;

/** Starts, seconds, and the draws of the generator in their order. */
function doingOf(
  times: readonly (readonly [start: number, seconds: number])[],
  draws: readonly number[] = [],
  each = 1,
) {
  const left = [...draws];
  const doing = new Doing(record("A", "cool", 0, 0), () => left.shift() ?? NaN);
  doing.each = each;
  for (const [start, seconds] of times) doing.add(start, seconds);
  return doing;
}

const five = [
  [0, 1],
  [10, 2],
  [30, 4],
  [60, 8],
  [100, 16],
] as const;

describe("the times of one step", () => {
  it("are each by itself at first", () => {
    const doing = doingOf(five);
    expect([doing.count, doing.cells, doing.first, doing.last]).toEqual([5, 5, 0, 100]);
    expect([doing.station, doing.name, doing.kind]).toEqual(["A", "cool", "step"]);
    expect(doing.times).toEqual([1, 2, 4, 8, 16]);
    expect(doing.gaps()).toEqual([10, 20, 30, 40]);
    expect(doing.marks()).toEqual([0, 10, 30, 60, 100].map((time) => ({ time, count: 1 })));
    expect(doing.durations()).toEqual([1, 2, 4, 8, 16].map((sum) => ({ sum, count: 1 })));
    expect(doing.spans().map(({ from, until }) => [from, until])).toEqual(five.map(([from, lasts]) => [from, from + lasts])); // prettier-ignore
  });

  it("may go on", () => {
    const doing = doingOf(five);
    doing.extend(3);
    expect(doing.times).toEqual([1, 2, 4, 8, 19]);
  });

  it("become sums of two, with either gap by the draw, and the last alone", () => {
    const doing = doingOf(five, [0.4, 0.5, 0.4]);
    doing.halve();
    expect([doing.each, doing.count, doing.cells]).toEqual([2, 5, 3]);
    expect(doing.durations()).toEqual([
      { sum: 3, count: 2 },
      { sum: 12, count: 2 },
      { sum: 16, count: 1 },
    ]);
    // The first cell takes the gap of its second start, the second keeps its own, the third has no second one.
    expect(doing.gaps()).toEqual([10, 20, 40]);
    expect(doing.marks()).toEqual([
      { time: 0, count: 1 },
      { time: 30, count: 2 },
      { time: 100, count: 2 },
    ]);
    // The seconds of a cell lie evenly until the next one, those of the last until its end.
    expect(doing.spans()).toEqual([
      { from: 0, until: 30, seconds: 3 },
      { from: 30, until: 100, seconds: 12 },
      { from: 100, until: 116, seconds: 16 },
    ]);
  });

  it("are added to the sum that is open, and end with the latest end", () => {
    // A gap takes the place of the one before it with the chance of 1 of 2, 1 of 3, 1 of 4.
    const doing = doingOf([...five, [110, 1]], [0.49, 0.34, 0.2], 4);
    expect(doing.durations()).toEqual([
      { sum: 15, count: 4 },
      { sum: 17, count: 2 },
    ]);
    expect(doing.marks()).toEqual([
      { time: 0, count: 1 },
      { time: 100, count: 4 },
      { time: 110, count: 1 },
    ]);
    expect(doing.spans().map(({ from, until }) => [from, until])).toEqual([[0, 100], [100, 116]]); // prettier-ignore
    // 0.49 < 1/2 takes 10, 0.34 > 1/3 leaves it, 0.2 < 1/4 takes 30.
    expect(doing.gaps()[0]).toBe(30);
    expect(doingOf(five, [0.51, 0.32, 0.26], 4).gaps()[0]).toBe(20);
  });

  it("of a cell before which the next one starts last as long as they are", () => {
    const doing = doingOf([[50, 5], [60, 5], [50, 5], [55, 5]], [0.9, 0.9], 2); // prettier-ignore
    expect(doing.spans()[0]).toEqual({ from: 50, until: 60, seconds: 10 });
  });
});

function lineOf(records: readonly StepRecord[], kept?: number) {
  const line = new LineLog(kept);
  for (const each of records) line.take(each);
  return line;
}

const spansOf = (line: LineLog) => line.stretches().map(({ from, until }) => [from, until]);

describe("the stretches of a log", () => {
  it("reach from the first start to the latest end, whatever the order of rows", () => {
    expect(spansOf(lineOf([record("A", "cool", 20, 50), record("A", "open", 30, 5), record("B", "cool", 10, 5)]))).toEqual([[10, 70]]); // prettier-ignore
  });

  it("end where nothing comes for more than an hour, and with each run", () => {
    const rows = [record("A", "cool", 0, 100), record("A", "cool", 3700, 100), record("A", "cool", 7400.5, 100)];
    expect(spansOf(lineOf(rows))).toEqual([[0, 3800], [7400.5, 7500.5]]); // prettier-ignore
    const runs = [record("A", "cool", 0, 7), record("A", "cool", 5, 7, { run: "2" }), record("A", "cool", 9, 7)];
    expect(spansOf(lineOf(runs))).toEqual([[0, 16], [5, 12]]); // prettier-ignore
  });

  it("are left out where nothing lasts; rows without a time are counted", () => {
    const { start: _, ...untimed } = record("A", "cool", 0, 7);
    const line = lineOf([record("A", "cool", 0, 0), untimed, record("A", "cool", 9000, 7), untimed]);
    expect([spansOf(line), line.untimed, line.late]).toEqual([[[9000, 9007]], 2, 0]);
  });
});

describe("a step after a stop", () => {
  const stop = (start: number) => record("A", "wiped", start, 5, { kind: "stop" });
  const timesOf = (records: readonly StepRecord[], step = "cool") =>
    lineOf(records).stretches()[0]!.doings.get(doingKey("A", step))?.times;

  it("goes on once, after as many stops as there are", () => {
    const rows = [record("A", "cool", 0, 3), stop(3), stop(8), record("A", "cool", 13, 4), record("A", "cool", 17, 9)];
    expect(timesOf(rows)).toEqual([7, 9]);
  });

  it("is another one without a stop, with another name, at another station, or after a wait", () => {
    const first = record("A", "cool", 0, 3);
    expect(timesOf([first, record("A", "cool", 3, 4)])).toEqual([3, 4]);
    expect(timesOf([first, stop(3), record("A", "open", 8, 4), record("A", "cool", 12, 2)])).toEqual([3, 2]);
    expect(timesOf([first, { ...stop(3), station: "B" }, record("A", "cool", 8, 4)])).toEqual([3, 4]);
    expect(timesOf([first, record("A", "idle", 3, 5, { kind: "wait" }), record("A", "cool", 8, 4)])).toEqual([3, 4]);
    expect(timesOf([stop(0), record("A", "cool", 5, 4)])).toEqual([4]);
  });

  it("goes on over a wait behind the stop, and is no wait of the same name", () => {
    const wait = (step: string) => record("A", step, 8, 5, { kind: "wait" });
    expect(timesOf([record("A", "cool", 0, 3), stop(3), wait("idle"), record("A", "cool", 13, 4)])).toEqual([7]);
    expect(timesOf([record("A", "cool", 0, 3), stop(3), wait("cool")])).toEqual([3, 5]);
  });
});

describe("a line in bounded room", () => {
  const rows = (count: number, run: string) => Array.from({ length: count }, (_, i) => record("A", "cool", i * 10, 1, { run })); // prettier-ignore

  it("makes sums of two as soon as it has more cells than it may keep, beside one of each stretch", () => {
    expect(lineOf(rows(5, ""), 4).cells).toBe(5);
    expect(lineOf(rows(6, ""), 4).cells).toBe(3);
    // Two stretches may have six; the seventh makes sums of both: 3 and 2.
    const line = lineOf([...rows(5, "1"), ...rows(2, "2")], 4);
    expect(line.cells).toBe(4);
    expect(line.stretches().map(({ doings }) => doings.get(doingKey("A", "cool"))?.times)).toEqual([[2, 2, 1], [2]]);
    // A later stretch has sums from its start.
    const later = lineOf([...rows(6, "1"), ...rows(3, "2")], 4)
      .stretches()[1]!
      .doings.get(doingKey("A", "cool"))!;
    expect([later.each, later.times]).toEqual([2, [2, 1]]);
  });
});

describe("the traced part of a log", () => {
  const part = (most: number, ...starts: readonly (number | undefined)[]) => {
    const made = new TracedPart(most);
    for (const start of starts) {
      const { start: _, ...untimed } = record("A", "cool", 0, 1);
      made.take(start === undefined ? untimed : record("A", "cool", start, 1));
    }
    return made;
  };

  it("is all of a log of as many rows as it may have, without those that have no time", () => {
    const whole = part(4, 30, undefined, 10, 20, 40);
    expect([whole.rows, whole.isWhole]).toEqual([4, true]);
  });

  it("is the first half by time above that, and takes no later row", () => {
    // Sorted 10, 20, 30, 40, 50: the middle one and all after it are left out, and so is each row from there on.
    const cut = part(4, 50, 40, 30, 20, 10, 30, 29);
    expect([cut.rows, cut.isWhole]).toEqual([3, false]);
    expect(cut.stretches().map(({ from, until }) => [from, until])).toEqual([[10, 30]]);
  });
});
