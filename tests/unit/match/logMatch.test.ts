// A log of two stations beside two runs of a model that is 10 % slower: every measure by hand.
import { describe, expect, it } from "vitest";
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { LineLog, type Stretch } from "#analysis/match/lineLog.ts";
import { logMatch, type Comparison, type Lines } from "#analysis/match/logMatch.ts";
import type { Estimate } from "#analysis/statistics/equivalence.ts";

interface Line {
  readonly cycle: number;
  readonly shots?: number;
  readonly from?: number;
  readonly idle?: string;
  readonly bCools?: number;
}

/** A drops for 1 s, cools for 4 s and waits until its next shot; B drops half a cycle later, and has no waits. */
function line({ cycle, shots = 12, from = 0, idle = "idle", bCools = 2 }: Line): Stretch {
  const log = new LineLog();
  const take = (station: string, step: string, start: number, seconds: number, kind: StepRecord["kind"] = "step") =>
    log.take({ station, step, kind, start, seconds, line: 1, run: "" });
  for (let i = 0; i < shots; i++) {
    const start = from + i * cycle;
    take("A", "drop", start, 1);
    take("A", "cool", start + 1, 4);
    take("A", idle, start + 5, cycle - 5, "wait");
    take("B", "drop", start + cycle / 2, 1);
    take("B", "cool", start + cycle / 2 + 1, bCools);
  }
  return log.stretches()[0]!;
}

const anchors = ["A", "B"].map((station) => ({ station, inLog: "drop", inModel: "drop" }));
const log = [line({ cycle: 10 })];
const model = [line({ cycle: 11, idle: "blocked" }), line({ cycle: 11, idle: "blocked" })];

const linesOf = (more: Partial<Lines> = {}): Lines => ({
  log,
  model,
  tracedLog: log,
  isTracedWhole: true,
  traced: { difference: undefined, runs: [] },
  anchors,
  steps: [],
  margin: 0.05,
  ...more,
});

const find = (measure: Comparison["measure"], resource: string, name: string, more?: Partial<Lines>) =>
  logMatch(linesOf(more)).comparisons.find(
    (each) => each.measure === measure && each.resource === resource && each.name === name,
  );
const near = (value: number) => expect.closeTo(value, 9) as number;

describe("the measures of a match", () => {
  it("are the output, the cycles, the steps of both, and the time of resources that have waits in the log", () => {
    const { comparisons } = logMatch(linesOf());
    expect(comparisons.map(({ measure, resource, name }) => [measure, resource, name].join(" ").trim())).toEqual([
      "throughput cell",
      "cycle A",
      "cycle B",
      "step A drop",
      "step A cool",
      "step B drop",
      "step B cool",
      "time A drop",
      "time A cool",
      "wait A idle",
      "wait A blocked",
    ]);
  });

  it("are compared as a share of the log's value", () => {
    // 10 s and 11 s; all equal, so that there is no error.
    expect(find("cycle", "A", "")).toMatchObject({
      log: { mean: 10, error: 0 },
      model: { mean: 11, error: 0 },
      result: { difference: near(0.1), low: near(0.1), high: near(0.1), agreement: "differs" },
    });
    expect(find("cycle", "A", "", { margin: 0.11 })?.result?.agreement).toBe("agrees");
    // Shots an hour: 3,600 / 5 = 720, and 3,600 / 5.5, which is 1 / 11 less.
    expect(find("throughput", "cell", "")).toMatchObject({
      log: { mean: 720 },
      model: { mean: near(3600 / 5.5) },
      result: { difference: near(-1 / 11) },
    });
    const slowCool = [line({ cycle: 10, bCools: 3 }), line({ cycle: 10, bCools: 3 })];
    expect(find("step", "B", "cool", { model: slowCool })?.result).toMatchObject({ difference: near(0.5) });
  });

  it("have an error of both", () => {
    // Runs of 10 and 12 s: mean 11, error 1, one degree of freedom; as a share of 10 s 0.1.
    const found = find("cycle", "A", "", { model: [line({ cycle: 10 }), line({ cycle: 12 })] });
    expect(found?.model).toEqual({ mean: 11, error: 1, freedom: 1 });
    // t(0.95, 1) = 6.314 of any table.
    expect(found?.result?.high).toBeCloseTo(0.1 + 0.6314, 3);
    expect(found?.result?.agreement).toBe("undecided");
  });

  it("are compared in shares of time themselves", () => {
    // A waits 5 s of 10 s, and 6 s of 11 s, in twelve cycles.
    const [logged, modeled] = [60 / 120, 72 / 132];
    const wait = find("wait", "A", "idle")!;
    expect(wait.log?.mean).toBeCloseTo(logged, 9);
    expect(wait.model?.mean).toBe(0);
    expect(wait.result?.difference).toBeCloseTo(-logged, 9);
    const other = find("wait", "A", "blocked")!;
    expect([other.log?.mean, other.model?.mean]).toEqual([0, near(modeled)]);
    expect(find("time", "A", "cool")).toMatchObject({ log: { mean: near(4 / 10) }, model: { mean: near(4 / 11) } });
  });

  it("hold the trace-driven run against the part that it takes", () => {
    const traced = { difference: undefined, runs: [line({ cycle: 12, idle: "blocked" }), line({ cycle: 12 })] };
    const tracedLog = [line({ cycle: 8 })];
    const cycle = find("cycle", "A", "", { traced, tracedLog })!;
    expect([cycle.log?.mean, cycle.tracedLog?.mean, cycle.traced?.mean]).toEqual([10, 8, 12]);
    // 4 s more, as a share of the 10 s of the whole log.
    expect(cycle.tracedResult?.difference).toBeCloseTo(0.4, 9);
    expect(find("throughput", "cell", "", { traced, tracedLog })?.tracedLog?.mean).toBeCloseTo(900, 9);
    expect(find("step", "A", "cool", { traced, tracedLog })?.traced?.mean).toBe(4);
    const wait = find("wait", "A", "idle", { traced, tracedLog })!;
    // 3 s of 8 s; in one of two runs 7 s of 12 s.
    expect([wait.tracedLog?.mean, wait.traced?.mean]).toEqual([near(3 / 8), near(7 / 24)]);
    expect(wait.tracedResult?.difference).toBeCloseTo(7 / 24 - 3 / 8, 9);
  });

  it("have no output where the stations are not seen together, and no step that the model lacks", () => {
    const apart = new LineLog();
    for (const [station, from] of [
      ["A", 0],
      ["B", 2000],
    ] as const)
      // prettier-ignore
      for (let i = 0; i < 12; i++)
        for (const step of ["drop", "polish"])
          apart.take({ station, step, kind: "step", start: from + 10 * i, seconds: 1, line: 1, run: "" });
    const { comparisons } = logMatch(linesOf({ log: apart.stretches() }));
    expect(comparisons.map(({ measure, resource, name }) => [measure, resource, name].join(" ").trim())).toEqual([
      "cycle A",
      "cycle B",
      "step A drop",
      "step B drop",
    ]);
  });
});

describe("the size of a match", () => {
  it("is its shots and hours, over all stretches", () => {
    const two = logMatch(linesOf({ log: [line({ cycle: 10 }), line({ cycle: 10, shots: 6, from: 9000 })] }));
    expect([two.shots, two.hours]).toEqual([36, 180 / 3600]);
    // A stretch without any shot of a station has none.
    const only = new LineLog();
    only.take({ station: "A", step: "drop", kind: "step", start: 0, seconds: 1, line: 1, run: "" });
    expect(logMatch(linesOf({ log: [...log, ...only.stretches()] })).shots).toBe(25);
    expect([two.margin, two.tracedMargin, two.tracedHours]).toEqual([0.05, near(0.01), undefined]);
  });

  it("names the hours of the traced part where it is not the whole", () => {
    const tracedLog = [line({ cycle: 10, shots: 6 })];
    expect(logMatch(linesOf({ tracedLog, isTracedWhole: false })).tracedHours).toBe(60 / 3600);
  });
});

describe("the trace-driven output", () => {
  const tracedOf = (difference: Estimate | undefined, more: Partial<Lines> = {}) =>
    logMatch(linesOf({ traced: { difference, runs: [] }, ...more })).traced;
  const slower = { mean: -0.015, error: 0, freedom: 1 };

  it("is held to a fifth of the margin", () => {
    expect(tracedOf(slower)).toMatchObject({ difference: -0.015, agreement: "differs" });
    expect(tracedOf(slower, { margin: 0.1 })).toMatchObject({ agreement: "agrees" });
    expect(tracedOf(undefined)).toBeUndefined();
  });

  it("is unknown where the traced part does not see the stations together", () => {
    const apart = new LineLog();
    for (const [station, from] of [
      ["A", 0],
      ["B", 2000],
    ] as const)
      // prettier-ignore
      for (let i = 0; i < 12; i++)
        apart.take({ station, step: "drop", kind: "step", start: from + 10 * i, seconds: 1, line: 1, run: "" });
    expect(tracedOf(slower, { tracedLog: apart.stretches() })).toBeUndefined();
  });
});

describe("the spread of cycles", () => {
  it("is that of each station in the log and in the model", () => {
    const { spreads } = logMatch(linesOf({ model: [line({ cycle: 11 }), line({ cycle: 13 })] }));
    expect(spreads.map(({ station }) => station)).toEqual(["A", "B"]);
    expect(spreads[0]?.log.p50).toBe(10);
    // Eleven cycles of 11 s and eleven of 13 s.
    expect([spreads[0]?.model.p05, spreads[0]?.model.p95]).toEqual([11, 13]);
  });

  it("is absent where either has no cycle", () => {
    const { spreads } = logMatch(linesOf({ model: [line({ cycle: 11, shots: 1 })] }));
    expect(spreads).toEqual([]);
    expect(logMatch(linesOf({ log: [line({ cycle: 10, shots: 1 })] })).spreads).toEqual([]);
  });
});

describe("the busiest resource", () => {
  it("works the largest share of the time, in the log and in the model", () => {
    // A works 5 s of a cycle; B 3 s in the log, and 8 s of 11 s in the model.
    const busy = [line({ cycle: 11, bCools: 7 }), line({ cycle: 11, bCools: 7 })];
    const { busiest } = logMatch(linesOf({ model: busy }));
    // The model's last step ends 2.5 s after the last cycle of 12.
    expect(busiest).toEqual({
      log: { resource: "A", share: near(0.5) },
      model: { resource: "B", share: near(96 / 134.5) },
    });
  });

  it("is unknown where only one works", () => {
    const alone = new LineLog();
    for (let i = 0; i < 12; i++)
      alone.take({ station: "A", step: "drop", kind: "step", start: 10 * i, seconds: 1, line: 1, run: "" });
    expect(logMatch(linesOf({ log: alone.stretches() })).busiest).toBeUndefined();
  });
});
