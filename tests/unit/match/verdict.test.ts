// What a match means: agreement, blame, the measures that are named, and how much log is missing; all values by hand.
import { describe, expect, it } from "vitest";
import type { Comparison, LogMatch } from "#analysis/match/logMatch.ts";
import { shareApart, shareLess, verdictOf } from "#analysis/match/verdict.ts";
import type { Agreement, Equivalence } from "#analysis/statistics/equivalence.ts";

const estimate = (mean: number) => ({ mean, error: 0, freedom: 1 });

/** The interval is the difference ± half. */
const result = (agreement: Agreement, difference = 0, half = 0): Equivalence => {
  return { difference, low: difference - half, high: difference + half, p: 0.5, agreement };
};

const compared = (measure: Comparison["measure"], more: Partial<Comparison> = {}): Comparison => ({
  measure,
  resource: "A",
  name: "",
  log: undefined,
  model: undefined,
  traced: undefined,
  tracedLog: undefined,
  result: undefined,
  tracedResult: undefined,
  ...more,
});

const stepsTraced = (...traced: readonly boolean[]) =>
  traced.map((isTraced, i) => ({ resource: "A", step: `step ${i}`, isTraced }));

const matchOf = (comparisons: readonly Comparison[], more: Partial<LogMatch> = {}): LogMatch => ({
  margin: 0.05,
  tracedMargin: 0.01,
  steps: stepsTraced(true),
  comparisons,
  spreads: [],
  traced: undefined,
  busiest: undefined,
  shots: 100,
  hours: 10,
  tracedHours: undefined,
  ...more,
});

const outputs = (...agreements: readonly Agreement[]) =>
  agreements.map((agreement) => compared("cycle", { result: result(agreement) }));

describe("the agreement", () => {
  it.each<[readonly Agreement[], Agreement]>([
    [["agrees", "agrees"], "agrees"],
    [["agrees", "undecided"], "undecided"],
    [["undecided", "differs", "agrees"], "differs"],
  ])("of %j is %s", (found, agreement) => {
    expect(verdictOf(matchOf(outputs(...found))).agreement).toBe(agreement);
  });

  it("is open where a measure has no result, and comes from output and cycles alone", () => {
    expect(verdictOf(matchOf([...outputs("agrees"), compared("throughput")])).agreement).toBe("undecided");
    const others = (["step", "time", "wait"] as const).map((measure) =>
      compared(measure, { result: result("differs", 1) }),
    );
    expect(verdictOf(matchOf([...outputs("agrees"), ...others]))).toMatchObject({
      agreement: "agrees",
      decisive: outputs("agrees"),
    });
  });
});

describe("the blame", () => {
  it.each<[Agreement, Agreement | undefined, string]>([
    ["agrees", "agrees", "none"],
    ["agrees", "differs", "hidden"],
    ["agrees", "undecided", "unclear"],
    ["agrees", undefined, "unclear"],
    ["differs", "agrees", "times"],
    ["differs", "differs", "logic"],
    ["differs", "undecided", "unclear"],
    ["differs", undefined, "unclear"],
    ["undecided", "agrees", "unclear"],
    ["undecided", "differs", "logic"],
    ["undecided", "undecided", "unclear"],
  ])("of a drawn run that %s and a traced one that %s: %s", (drawn, traced, blame) => {
    const match = matchOf(outputs(drawn), { traced: traced && result(traced) });
    expect(verdictOf(match).blame).toBe(blame);
  });

  it("is unclear where the log has less than half of the steps", () => {
    const blameOf = (...traced: readonly boolean[]) =>
      verdictOf(matchOf(outputs("differs"), { traced: result("agrees"), steps: stepsTraced(...traced) })).blame;
    expect(blameOf(true, false)).toBe("times");
    expect(blameOf(true, false, false)).toBe("unclear");
  });
});

describe("what is named", () => {
  const named = (name: string, more: Partial<Comparison>) => compared("step", { name, ...more });
  const names = (found: readonly Comparison[]) => found.map(({ name }) => name);

  it("are the decisive measures, the farthest first, those without a result last", () => {
    const match = matchOf([
      compared("cycle", { name: "none" }),
      compared("cycle", { name: "near", result: result("agrees", 0.01) }),
      compared("throughput", { name: "far", result: result("differs", -0.3) }),
      compared("cycle", { name: "middle", result: result("differs", 0.2) }),
    ]);
    expect(names(verdictOf(match).decisive)).toEqual(["far", "middle", "near", "none"]);
  });

  it("are at most three steps that differ, the most seconds first", () => {
    const differs = { result: result("differs", 0.5) };
    const match = matchOf([
      named("1 s more", { log: estimate(1), model: estimate(2), ...differs }),
      named("4 s less", { log: estimate(9), model: estimate(5), ...differs }),
      named("9 s more, agrees", { log: estimate(1), model: estimate(10), result: result("agrees") }),
      named("9 s more, no result", { log: estimate(1), model: estimate(10) }),
      named("2 s more", { log: estimate(1), model: estimate(3), ...differs }),
      named("3 s more", { log: estimate(7), model: estimate(10), ...differs }),
      compared("cycle", { name: "a cycle", log: estimate(1), model: estimate(20), ...differs }),
    ]);
    expect(names(verdictOf(match).steps)).toEqual(["4 s less", "3 s more", "2 s more"]);
  });

  it("counts a missing mean as nothing", () => {
    const differs = { result: result("differs", 0.5) };
    const match = matchOf([
      named("only in the log", { log: estimate(2), ...differs }),
      named("in both", { log: estimate(2), model: estimate(3), ...differs }),
      named("only in the model", { model: estimate(1.5), ...differs }),
    ]);
    expect(names(verdictOf(match).steps)).toEqual(["only in the log", "only in the model", "in both"]);
  });

  it("are at most three times and waits half a percent of the time apart, the farthest first", () => {
    const share = (measure: "time" | "wait" | "step", log: number, model: number) =>
      compared(measure, { name: `${log} ${model}`, log: estimate(log), model: estimate(model) });
    const match = matchOf([
      share("time", 0.5, 0.4951),
      share("wait", 0, 0.005),
      share("time", 0.3, 0.2),
      share("step", 0.9, 0.1),
      share("wait", 0.1, 0.3),
      share("time", 0.01, 0.02),
    ]);
    expect(names(verdictOf(match).waits)).toEqual(["0.1 0.3", "0.3 0.2", "0.01 0.02"]);
    expect(names(verdictOf(matchOf(match.comparisons.slice(0, 2))).waits)).toEqual(["0 0.005"]);
  });
});

describe("a share of time", () => {
  const [log, model] = [estimate(0.25), estimate(0.5)];

  it("is that of the log less that of the model", () => {
    const each = compared("wait", { log, model });
    expect([shareLess(each), shareApart(each)]).toEqual([-0.25, 0.25]);
  });

  it("is held against the trace-driven run where there is one, over the part that it takes", () => {
    const [traced, tracedLog] = [estimate(0.125), estimate(0.75)];
    expect(shareLess(compared("wait", { log, model, traced, tracedLog }))).toBe(0.625);
    expect(shareLess(compared("wait", { log, model, traced }))).toBe(-0.25);
    expect(shareLess(compared("wait", { log, model, tracedLog }))).toBe(-0.25);
  });

  it("is nothing where either is unknown", () => {
    expect([shareLess(compared("wait", { log })), shareLess(compared("wait", { model }))]).toEqual([0, 0]);
  });
});

describe("the hours of log that are needed", () => {
  const needed = (found: readonly Equivalence[], hours = 10) =>
    verdictOf(
      matchOf(
        found.map((each) => compared("cycle", { result: each })),
        { hours },
      ),
    ).hoursNeeded;

  it("grow with the square of the width over the room that it has", () => {
    // By hand: |−0.01| lies 0.04 within the margin; a half width of 0.08 is twice as much: four times the hours.
    expect(needed([result("undecided", -0.01, 0.08)])).toBeCloseTo(40, 9);
    // 0.07 lies 0.02 beyond it; 0.06 is three times as much.
    expect(needed([result("undecided", 0.07, 0.06)])).toBeCloseTo(90, 9);
  });

  it("are the most that any measure needs; one that is decided needs none", () => {
    const [four, nine] = [result("undecided", -0.01, 0.08), result("undecided", 0.07, 0.06)];
    expect(needed([four, nine])).toBeCloseTo(90, 9);
    expect(needed([four, result("agrees", 0, 10)])).toBeCloseTo(40, 9);
  });

  it("are not named where more than 2,000 would be needed, nor where all is decided or nothing measured", () => {
    // Powers of two, so that the ratio is exactly 2.
    const twice = { ...result("undecided", 0, 0.125), p: 0.5 };
    const of = (hours: number) =>
      verdictOf(matchOf([compared("cycle", { result: twice })], { hours, margin: 0.0625 })).hoursNeeded;
    expect([of(500), of(501)]).toEqual([2000, undefined]);
    expect(needed([result("agrees")])).toBeUndefined();
    expect(needed([result("undecided", 0, 0.1), result("differs", 1)])).toBeUndefined();
    expect(verdictOf(matchOf([compared("cycle")])).hoursNeeded).toBeUndefined();
  });
});
