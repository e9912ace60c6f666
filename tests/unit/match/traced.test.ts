// The trace-driven run against a log that is written by hand, and a whole match of it.
import { describe, expect, it } from "vitest";
import { stepsInLog, tracedRun } from "#analysis/match/traced.ts";
import { LineLog, type Stretch } from "#analysis/match/lineLog.ts";
import { matchLog, readingOf } from "#analysis/match/matchLog.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const scenario = scenarioOf(cellText(1));
const anchors = [{ station: "station 1", inLog: "drop", inModel: "drop" }];

/**
 * One mold that takes 13.05 s a shot where all times are those of the scenario: shift 0.25, drop 1.8, close 0.6, blow 0.5, cool 8,
 * vent 0.5, open 0.6, remove 0.8 s. The log waits so long after each shot.
 */
function log(shots: number, { wait = 0, cool = 8, from = 0 } = {}): Stretch {
  const line = new LineLog();
  let time = from;
  const take = (step: string, seconds: number): void => {
    line.take({ station: "station 1", step, kind: "step", start: time, seconds, line: 1, run: "" });
    time += seconds;
  };
  for (let i = 0; i < shots; i++) {
    const steps = [["shift to port", 0.25], ["drop", 1.8], ["close", 0.6], ["blow", 0.5], ["cool", cool], ["vent", 0.5], ["open", 0.6], ["remove", 0.8]] as const; // prettier-ignore
    for (const [step, seconds] of steps) take(step, seconds);
    time += wait;
  }
  return line.stretches()[0]!;
}

describe("the trace-driven run", () => {
  it("takes the log's own times: the same output, however long they are", () => {
    const { difference, runs } = tracedRun(scenario, [log(30, { cool: 12 })], anchors);
    expect(difference).toMatchObject({ mean: 0, error: 0 });
    expect(runs.length).toBeGreaterThan(0);
    expect(stepsInLog(scenario, [log(30)]).filter(({ isTraced }) => isTraced).map(({ step }) => step)).toContain("cool"); // prettier-ignore
  });

  it("has more output than a log that waits for what the model does not know", () => {
    // 13.05 s against 13.05 + 1.305 s: shots an hour of the model over those of the log are 1.1.
    const { difference } = tracedRun(scenario, [log(31, { wait: 1.305 })], anchors);
    expect(difference?.mean).toBeCloseTo(0.1, 9);
    expect(difference?.error).toBeLessThan(1e-9);
    // 30 times between shots in batches of five; two stretches together have 12 of them.
    expect(difference?.freedom).toBe(5);
    const two = tracedRun(scenario, [log(31, { wait: 1.305 }), log(31, { wait: 1.305, from: 9000 })], anchors);
    expect([two.difference?.mean, two.difference?.freedom]).toEqual([expect.closeTo(0.1, 9), 11]);
    // At most 20 batches.
    expect(tracedRun(scenario, [log(151, { wait: 1.305 })], anchors).difference?.freedom).toBe(19);
  });

  it("runs at most for half as long again as the log", () => {
    // A log of half the cycle: its times of the drop alone, so that the model goes on with its own.
    const line = new LineLog();
    for (let i = 0; i < 31; i++)
      line.take({ station: "station 1", step: "drop", kind: "step", start: i * 6, seconds: 1.8, line: 1, run: "" });
    const [stretch] = line.stretches();
    const { runs, difference } = tracedRun(scenario, [stretch!], anchors);
    // What the log does not hold is drawn: three runs.
    expect(runs).toHaveLength(3);
    for (const run of runs) {
      expect(run.until).toBeLessThanOrEqual(1.5 * 181.8);
      expect(run.until).toBeGreaterThan(1.5 * 181.8 - 13.05);
    }
    // 6 s against 13.05 s.
    expect(difference?.mean).toBeCloseTo(6 / 13.05 - 1, 9);
  });

  it("is one run where the log has all times and nothing else is random", () => {
    const line = new LineLog();
    const all = [["plasticator", "recharge", 4], ["valve", "shift to neutral", 0.25], ["valve", "shift to port", 0.25], ["valve", "drop", 1.8]] as const; // prettier-ignore
    const stretch = log(30);
    for (const [station, step, seconds] of all)
      for (let i = 0; i < 30; i++)
        line.take({ station, step, kind: "step", start: i * 13.05, seconds, line: 1, run: "" });
    const whole = { ...stretch, doings: new Map([...stretch.doings, ...line.stretches()[0]!.doings]) };
    expect(stepsInLog(scenario, [whole]).filter(({ isTraced }) => !isTraced)).toEqual([]);
    expect(tracedRun(scenario, [whole], anchors).runs).toHaveLength(1);
    const stops = scenarioOf(cellText(1, "stops: [{ name: heater band, resource: plasticator, between: 20 h, repair: 5 s, step: finish }]")); // prettier-ignore
    expect(tracedRun(stops, [whole], anchors).runs).toHaveLength(3);
  });

  it("is none without a step time, for fewer than two batches, or within less time than the first step takes", () => {
    const line = new LineLog();
    for (let i = 0; i < 30; i++)
      line.take({ station: "station 1", step: "cycle", kind: "step", start: i * 13, seconds: 13, line: 1, run: "" });
    const cycles = [{ station: "station 1", inLog: "cycle", inModel: "drop" }];
    expect(tracedRun(scenario, line.stretches(), cycles)).toEqual({ difference: undefined, runs: [] });
    expect(tracedRun(scenario, [log(10)], anchors).difference).toBeUndefined();
    expect(tracedRun(scenario, [log(11)], anchors).difference?.freedom).toBe(1);
    const short = new LineLog();
    for (let i = 0; i < 30; i++)
      short.take({
        station: "station 1",
        step: "drop",
        kind: "step",
        start: i / 1000,
        seconds: 1e-3,
        line: 1,
        run: "",
      });
    expect(tracedRun(scenario, short.stretches(), anchors)).toEqual({ difference: undefined, runs: [] });
  });
});

describe("a whole match", () => {
  const matched = async (text: string, stretches: readonly Stretch[]) => {
    const model = scenarioOf(text);
    const reading = readingOf(model, new Map([["Mold 7", "station 1"]]));
    for (const { doings } of stretches)
      for (const doing of doings.values())
        doing.marks().forEach(({ time: start }, i) =>
          reading.take({ station: "mold 7", step: doing.name, kind: doing.kind, start, seconds: doing.times[i]!, line: 1, run: String(stretches.length) }),
        ); // prettier-ignore
    let breaths = 0;
    const match = await matchLog(model, reading, 0.05, async () => {
      breaths += 1;
    });
    return { match, breaths, reading };
  };

  it("runs the model at least five times and at most twenty, and asks between the runs", async () => {
    const runsOf = async (replications: number) =>
      (await matched(cellText(1).replace("replications: 3", `replications: ${replications}`), [log(30)])).breaths;
    expect([await runsOf(3), await runsOf(7), await runsOf(30)]).toEqual([5, 7, 20]);
  });

  it("has the cycle of the model from its warm-up on, for two hours or as long as the log", async () => {
    const { match, reading } = await matched(cellText(1), [log(30, { wait: 1.305 })]);
    expect(reading.anchors()).toEqual(anchors);
    expect([reading.unused(), reading.unmatched(), reading.unknown]).toEqual([[], [], []]);
    const cycle = match.comparisons.find(({ measure }) => measure === "cycle");
    expect(cycle?.log?.mean).toBeCloseTo(14.355, 9);
    expect(cycle?.model?.mean).toBeCloseTo(13.05, 9);
    expect(match).toMatchObject({ shots: 30, tracedHours: undefined, traced: { agreement: "differs" } });
    expect(match.traced?.difference).toBeCloseTo(0.1, 9);
  });
});
