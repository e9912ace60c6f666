// Stops that come seldom, by hand: their numbers, the control of their known rate, and what a longer run needs.
import { describe, expect, it } from "vitest";
import { differenceOfTerms, errorOf, type ControlTerm } from "#analysis/study/controlled.ts";
import { expectedStops, oftenEnough, rareStops } from "#analysis/study/rareStops.ts";
import { controlledStops, controlTasks, StopControl } from "#analysis/study/stopControl.ts";
import { summarizeMeasures } from "#analysis/study/summarizeMeasures.ts";
import type { ReplicationAnswer, StopCount } from "#analysis/replication/replicationAnswer.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { answerMade, type Amounts } from "../../support/madeAnswers.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { always } from "../../support/takeawayCell.ts";

const hour = 3600;
const stop = (name: string, more: Partial<StopSpec> = {}): StopSpec => ({
  name,
  resource: "side",
  comes: { by: "calendar", between: always(hour) },
  repair: always(360),
  start: "running",
  by: "itself",
  shift: "any",
  step: "finish",
  ...more,
});
/** Ten hours. */
const cell = (...stops: readonly StopSpec[]): Scenario => ({
  ...oneStation,
  stops,
  run: { ...oneStation.run, length: 10 * hour, warmup: 0 },
});
interface Seen {
  readonly count?: number;
  readonly repair?: number;
  readonly clock?: number | null;
  readonly frequent?: number;
}
const counted = (count: number, resource = "side", name = "jam"): StopCount => ({
  resource,
  stop: name,
  count,
  ended: count,
  seconds: 0,
  endedSeconds: 0,
  repairs: count,
  waitSeconds: 0,
});
/** One stop, whose clock runs all ten hours. */
const answer = (
  replication: number,
  amounts: Amounts,
  { count = 0, repair = 0, clock = 10 * hour, frequent }: Seen,
): ReplicationAnswer =>
  answerMade(replication, amounts, {
    task: { replication, scale: null, ...(frequent === undefined ? {} : { frequent }) },
    stops: [counted(99, "other"), counted(98, "side", "heater"), counted(count)],
    exposures: [{ repairSeconds: repair, clock }],
  });
const parts = (value: number): Amounts => ({ "good parts per hour": value, "cycle time": 1 / value });
const several = (count: number, seen: Seen) => Array.from({ length: count }, (_, i) => answer(i + 1, parts(100), seen));

describe("the number of stops", () => {
  it("is that seen, beside the mean number from the clock", () => {
    const scenario = cell(stop("jam"));
    const found = expectedStops(scenario, [answer(1, {}, { count: 7 }), answer(2, {}, { count: 8, clock: 5 * hour })]);
    expect(found).toMatchObject([{ index: 0, seen: 15, expected: 15 }]);
    const byCycles = cell(stop("jam", { comes: { by: "cycles", cycles: 500 } }));
    expect(expectedStops(byCycles, [answer(1, {}, { clock: 1500 })])).toMatchObject([{ seen: 0, expected: 3 }]);
    expect(expectedStops(scenario, [answer(1, {}, {}), answer(2, {}, { clock: null })])).toEqual([]);
    expect(expectedStops(scenario, [answerMade(1, {})])).toEqual([]);
    expect(expectedStops(scenario, [])).toEqual([]);
  });

  it("is often enough with 30 in all and three in each replication", () => {
    expect([1, 10, 11, 20].map(oftenEnough)).toEqual([30, 30, 33, 60]);
  });
});

describe("stops that are too rare", () => {
  const rare = (scenario: Scenario, answers: readonly ReplicationAnswer[], controlled: readonly number[] = []) =>
    rareStops(scenario, answers, new Set(controlled));

  it("are those with fewer than ten in all or a mean below three in each replication", () => {
    const scenario = cell(stop("jam"));
    expect(rare(scenario, several(2, { count: 5 }))).toBeNull();
    expect(rare(scenario, several(2, { count: 4 }))).toMatchObject({
      stops: [{ name: "jam", seen: 8 }],
      isSeen: false,
    });
    const seldom = cell(stop("jam", { comes: { by: "calendar", between: always(4 * hour) } }));
    expect(rare(seldom, several(5, { count: 2 }))).toMatchObject({
      stops: [{ seen: 10 }],
      isSeen: true,
      isControlled: false,
    });
    expect(rare(seldom, several(5, { count: 2 }), [0])?.isControlled).toBe(true);
  });

  it("need a run of whole hours that is long enough", () => {
    // By hand: 2.5 are to be expected in ten hours; ten of them in two replications, five each, take 20 h.
    const seldom = cell(stop("jam", { comes: { by: "calendar", between: always(4 * hour) } }));
    expect(rare(seldom, several(2, {}))?.length).toBe(20 * hour);
    // Three in each of ten replications: 12 h of observed time, after half an hour of warm-up.
    const warm = { ...seldom, run: { ...seldom.run, length: 10.5 * hour, warmup: hour / 2 } };
    expect(rare(warm, several(10, {}))?.length).toBe(13 * hour);
    // Enough is expected, though few were seen.
    expect(rare(cell(stop("jam")), several(10, {}))?.length).toBe(10 * hour);
    expect(rare(cell(stop("jam")), several(10, { clock: 0 }))?.length).toBeNull();
  });

  it("are told once for all stations, with the fewest of one", () => {
    const scenario = cell(stop("jam"), stop("jam", { resource: "other" }));
    const both = several(2, { count: 3 }).map((each) => ({
      ...each,
      stops: [counted(3), counted(2, "other")],
      exposures: [each.exposures![0]!, each.exposures![0]!],
    }));
    expect(rare(scenario, both)?.stops).toEqual([{ name: "jam", seen: 4 }]);
  });
});

describe("the control of rare stops", () => {
  const scenario = cell(stop("jam"));
  /** By hand: the mean repair time is a tenth; shares of 0 and 0.1 above it, and 0.4 and 0.5 in the runs with many. */
  const answers = [answer(1, parts(100), { repair: hour }), answer(2, parts(90), { repair: 2 * hour })];
  const frequent = (last: number, count = 5) => [
    answer(1, parts(60), { repair: 5 * hour, frequent: 0, count }),
    answer(2, parts(last), { repair: 6 * hour, frequent: 0, count }),
  ];
  const controlled = (measure: string, last: number, count?: number) => {
    const control = new StopControl(scenario, answers, () => frequent(last, count));
    const summary = summarizeMeasures(answers).find((each) => each.resource === "cell" && each.measure === measure)!;
    return { summary, found: control.apply(summary), stops: [...control.stops] };
  };

  it("gives each replication the mean repair time, with an allowance for its slope", () => {
    const { summary, found, stops } = controlled("good parts per hour", 50);
    expect(stops).toEqual([0]);
    // By hand: 40 parts less for 0.4 more, so that 90 parts become 100 with a tenth less.
    expect(found.controlled?.values.map((value) => Number(value.toFixed(9)))).toEqual([100, 100]);
    const [term] = found.controlled!.terms;
    expect(term).toMatchObject({ stop: "jam of side", slope: expect.closeTo(-100, 9) });
    expect([term!.error, term!.rest].map((value) => Number(value.toFixed(6)))).toEqual([0, 0]);
    // 20 repairs of 360 s in 72,000 s: √20 × 360 / 72,000.
    expect(term?.spread).toBeCloseTo(Math.sqrt(20) / 200, 12);
    // [C] t(0.975, 1) = 12.7062 times a tenth of 100 times the spread.
    expect(found.interval.halfWidth).toBeCloseTo((12.7062 * 10 * Math.sqrt(20)) / 200, 3);
    expect(found.interval.mean).toBeCloseTo(100, 9);
    expect(found.interval.sd).toBe(summary.interval.sd);
  });

  it("adds the error of the slope and what single stops cost besides", () => {
    // By hand: rises of −40 and −30 over 0.8, rests of −5 and 5, of which the squares are 2 × 50; ten stops in these runs.
    const [term] = controlled("good parts per hour", 60).found.controlled!.terms;
    expect(term?.slope).toBeCloseTo(-87.5, 9);
    expect(term?.error).toBeCloseTo(10 / 0.8, 9);
    expect(term?.rest).toBeCloseTo(Math.sqrt((100 * 20) / 10) / 2, 9);
  });

  it("takes the inverse of times, which grow without limit", () => {
    const { found } = controlled("cycle time", 50);
    expect(found.controlled?.values.map((value) => Number(value.toFixed(9)))).toEqual([0.01, 0.01]);
    // By hand: the slope of 1/x at 100 is −1/100².
    expect(found.controlled?.terms[0]?.slope).toBeCloseTo(0.01, 9);
  });

  it("is none with few stops in these runs, without all values, or without a stop that is rare", () => {
    expect(controlled("good parts per hour", 50, 1).found.controlled).toBeUndefined();
    const control = new StopControl(scenario, answers, () => frequent(50));
    const { summary } = controlled("good parts per hour", 50);
    const partly = { ...summary, values: [100, null] };
    expect(control.apply(partly)).toBe(partly);
  });

  it("takes those that vary the output most, five at most, in the order of the scenario", () => {
    const numbers = (stops: readonly StopSpec[], more: Partial<Scenario> = {}, count = 2) =>
      controlledStops(
        { ...cell(...stops), ...more },
        several(count, {}).map((each) => ({ ...each, exposures: stops.map(() => each.exposures![0]!) })),
      );
    const longer = [1, 6, 2, 5, 3, 4].map((minutes) => stop(`${minutes}`, { repair: always(60 * minutes) }));
    expect(numbers(longer)).toEqual([1, 2, 3, 4, 5]);
    expect(numbers([stop("a", { start: "fresh" }), stop("b", { repair: always(0) }), stop("c")])).toEqual([2]);
    // By hand: 20 of each in two replications, 30 in three.
    expect(numbers([stop("a")], {}, 3)).toEqual([]);
    expect(numbers([stop("a")], {}, 1)).toEqual([]);
    const calendar = { begins: "", clockChanges: [], off: [], operators: [], shifts: [], breaks: "stop" } as const;
    expect(numbers([stop("a")], { calendar })).toEqual([]);
    expect(numbers([stop("a")], { changes: [] })).toEqual([]);
  });

  it("runs the first replications again, ten at most", () => {
    const rare = cell(stop("jam", { comes: { by: "calendar", between: always(10 * hour) } }));
    expect(controlTasks(scenario, several(2, {}))).toEqual([
      { replication: 1, scale: null, frequent: 0 },
      { replication: 2, scale: null, frequent: 0 },
    ]);
    expect(controlTasks(rare, several(12, {}))).toHaveLength(10);
  });
});

describe("the terms of a difference", () => {
  const term = (name: string, slope: number): ControlTerm => ({ stop: name, slope, error: 3, spread: 2, rest: 4 });

  it("subtract the slopes of a stop of both sides, and keep those of one", () => {
    const other = { ...term("jam", 10), spread: 5, error: 4, rest: 3 };
    expect(differenceOfTerms([term("jam", 4), term("own", 7)], [other, term("more", 1)])).toEqual([
      { stop: "jam", slope: 6, error: 5, spread: 5, rest: 5 },
      term("more", 1),
      term("own", 7),
    ]);
    expect(differenceOfTerms()).toEqual([]);
  });

  it("have an error of slope, allowance and rest", () => {
    // By hand: 2 × 3, 2 × 0.1 × 30 and 4: √(36 + 36 + 16).
    expect(errorOf([term("jam", 30)])).toBeCloseTo(Math.sqrt(88), 12);
    expect(errorOf([])).toBe(0);
  });
});
