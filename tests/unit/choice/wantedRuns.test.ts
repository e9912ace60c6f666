// The replications that a choice wants next, with observations that are written down.
import { describe, expect, it } from "vitest";
import {
  beginChoice,
  haveSameCosts,
  progressOf,
  screened,
  withChoiceAnswers,
  type ChoiceState,
} from "#analysis/choice/choice.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { costWindows, measuresOf, observationOf } from "#analysis/choice/observed.ts";
import { choiceWanted } from "#analysis/choice/wantedRuns.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { scenarioFrom } from "../../support/changedCell.ts";
import { shippedText } from "../../support/reported.ts";
import { goodParts, usualGoal } from "../../support/chosen.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { answerMade } from "../../support/madeAnswers.ts";
import { around, choiceOf, courseOf, seen } from "./madeChoice.ts";

const wanted = (state: ChoiceState) =>
  choiceWanted(state).map(({ index, tasks }) => [index, tasks[0]?.replication, tasks.at(-1)?.replication]);
const need = { parts: 100, within: 3600, chance: 0.5 };
const meeting = (value: number, isMet: boolean, count: number) =>
  Array.from({ length: count }, () => seen(value, { met: isMet }));

describe("the next replications", () => {
  it("are the first stage of all layouts", () => {
    const state = choiceOf([
      courseOf("a", around(9, 1, 1)),
      courseOf("b", around(9, 1, 20)),
      courseOf("c", around(9, 1, 7)),
    ]);
    expect(wanted(state)).toEqual([
      [0, 2, 20],
      [2, 8, 20],
    ]);
    expect(choiceWanted(state)[0]?.tasks[0]).toEqual({ replication: 2, scale: null, brief: true });
  });

  it("are none of a layout that was left out, and further ones of those that are not dropped", () => {
    const state = choiceOf([
      courseOf("out", [], { leftOut: "It stands still." }),
      courseOf("poor", around(80, 1)),
      courseOf("a", around(101, 3)),
      courseOf("b", around(100, -3)),
    ]);
    const found = wanted(state);
    // By hand: h² = 19 (0.05^(−2/19) − 1) = 7.044; leads of 7 and −5 have S² = 37.89 and the sum 20, one a replication. They reach
    // the boundary of (7.044 × 37.89 / 4 − r) at r = 33.4.
    expect(found).toEqual([
      [2, 21, 34],
      [3, 21, 34],
    ]);
    expect(wanted(choiceOf([courseOf("a", around(90, 0)), courseOf("b", around(99, 0))]))).toEqual([]);
  });

  it("are few at a time while it is open which layouts can meet a need", () => {
    // By hand: the ratio doubles with a run that meets it; two layouts share half of 0.05: 1/80, seven runs.
    const state = choiceOf([courseOf("a", meeting(9, true, 1)), courseOf("b", meeting(9, false, 1))], { need });
    expect(wanted(state)).toEqual([
      [0, 2, 7],
      [1, 2, 7],
    ]);
    const begun = choiceOf([courseOf("a", meeting(9, true, 7)), courseOf("b", meeting(9, false, 5))], { need });
    expect(wanted(begun)).toEqual([[1, 6, 7]]);
    // One is dropped, and the other one goes on with the first stage.
    const barred = choiceOf([courseOf("a", meeting(9, true, 7)), courseOf("b", meeting(99, false, 7))], { need });
    expect(wanted(barred)).toEqual([[0, 8, 20]]);
    expect(progressOf(barred)).toMatchObject({ active: [0, 1], barred: [1], selectionGoal: { confidence: 0.975 } });
  });

  it("test the need of the selected layout, then of the next simpler one", () => {
    const half = Array.from({ length: 20 }, (_, i) => seen(120, { met: i % 2 === 0 }));
    const small = Array.from({ length: 20 }, (_, i) => seen(100, { met: i % 2 === 0 }));
    const tested = choiceOf([courseOf("small", small, { stations: 1 }), courseOf("large", half, { stations: 2 })], {
      need,
    });
    // By hand: as many runs met it as not, so that seven more would decide.
    expect(wanted(tested)).toEqual([[1, 21, 27]]);
    const kept = choiceOf([courseOf("small", small), courseOf("large", meeting(120, true, 20), { stations: 2 })], {
      need,
    });
    expect(wanted(kept)).toEqual([[0, 21, 27]]);
    const both = choiceOf(
      [courseOf("small", meeting(9, true, 20)), courseOf("large", meeting(120, true, 20), { stations: 2 })],
      { need },
    );
    expect(wanted(both)).toEqual([]);
  });

  it("divide the error among all layouts, and end at the cap", () => {
    const goal = { ...usualGoal, need, confidence: 0.95 };
    // By hand: 0.025 for one of two layouts: 1/80; for one of eight 1/320.
    expect([2, 8].map((layouts) => screened([[]], goal, layouts)?.more)).toEqual([7, 9]);
    expect(screened([[]], { ...goal, mostReplications: 3 }, 2)?.more).toBe(3);
    expect(screened([[]], usualGoal, 2)).toBeNull();
    const free = choiceOf([courseOf("a", around(9, 1)), courseOf("b", around(9, 1))]);
    expect(progressOf(free)).toMatchObject({ screening: null, selectionGoal: { confidence: 0.95 } });
  });
});

describe("an observation", () => {
  const hour = { ...oneStation, run: { ...oneStation.run, length: 7200, warmup: 0 } };
  const priced: Scenario = { ...hour, costs: { currency: "EUR", machine: 36 / 3600 } };
  const planned = { elementTimes: [{ station: null, element: "APT", seconds: 7200 }] } as const;
  const answer = (good: number) => answerMade(1, { "good parts per hour": good, "parts per hour": 90 }, planned);
  const observed = (scenario: Scenario, good: number, parts: number | null, measure = goodParts.measure) =>
    observationOf(scenario, answer(good), measuresOf(scenario, answer(good), []), {
      criterion: { ...goodParts, measure },
      need: parts === null ? null : { ...need, parts },
    });

  it("has the criterion, the output and the costs of the cell", () => {
    expect(observed(hour, 60, null)).toEqual({
      value: 60,
      goodParts: 60,
      costPerHour: null,
      costPerThousand: null,
      met: null,
      stops: {},
    });
    // By hand: 36 an hour over 60 parts.
    expect(observed(priced, 60, null, "machine per hour")?.value).toBeCloseTo(36, 9);
    expect(observed(priced, 60, null, "machine per 1,000 good parts")?.value).toBeCloseTo(600, 9);
    expect(observed(priced, 60, null)?.costPerHour).toBeCloseTo(36, 9);
    expect(observed(priced, 60, null)?.costPerThousand).toBeCloseTo(600, 9);
    expect(observed(priced, 0, null, "machine per 1,000 good parts")).toBeUndefined();
    expect(observed(priced, 0, null)?.costPerThousand).toBeNull();
  });

  it("has met a need with the parts of the whole run", () => {
    expect(observed(hour, 60, 120)?.met).toBe(true);
    expect(observed(hour, 60, 121)?.met).toBe(false);
    // A rate of 40.3 parts in three hours comes back as 120.89999999999999 or so.
    expect(observed(hour, 59.99999999999999, 120)?.met).toBe(true);
  });

  it("keeps its stops", () => {
    const stops = [
      { resource: "a", stop: "jam", count: 1, ended: 1, seconds: 5, endedSeconds: 5, repairs: 1, waitSeconds: 0 },
    ];
    const found = observationOf(hour, answerMade(1, { "good parts per hour": 1 }, { stops }), answer(5).measures, {
      criterion: goodParts,
      need: null,
    });
    expect(found?.stops).toEqual({ stops });
    const exposures = [{ clock: 5, repairSeconds: 1 }] as never;
    const exposed = observationOf(hour, answerMade(1, {}, { exposures }), answer(5).measures, {
      criterion: goodParts,
      need: null,
    });
    expect(exposed?.stops).toEqual({ exposures });
  });

  it("needs no windows without costs", () => {
    expect(costWindows(hour, answer(5))).toEqual([]);
    const shipped = scenarioFrom(shippedText("order-by-friday"));
    const { costs: _, ...free } = shipped;
    expect(costWindows(free, answer(5))).toEqual([]);
    // At the throughput of the run, or at that of the ideal cycle where nothing was made.
    const at = (rate?: number) => stationWindows(shipped, idealCycle(shipped), rate);
    expect(costWindows(shipped, answerMade(1, { "melt per hour": 36 }))).toEqual(at(0.01));
    expect(costWindows(shipped, answerMade(1, { "melt per hour": 0 }))).toEqual(at());
    expect(costWindows(shipped, answerMade(1, {}))).toEqual(at());
    expect(at(0.01)).not.toEqual(at());
  });
});

describe("the course of a layout", () => {
  const layout = { scenario: oneStation, floorSpace: null };
  const answers = (...values: readonly number[]) =>
    values.map((good, i) => answerMade(i + 1, { "good parts per hour": good }));

  it("grows by its answers", () => {
    const state = beginChoice([layout, layout], [answers(5)[0]!, answers(6)[0]!], usualGoal);
    const next = withChoiceAnswers(state, 1, answers(7, 8));
    expect(next.courses.map(({ observations }) => observations.map(({ value }) => value))).toEqual([[5], [6, 7, 8]]);
    expect(haveSameCosts(state)).toBe(false);
    const priced = { ...layout, scenario: { ...oneStation, costs: { currency: "EUR", machine: 1 } } };
    expect(haveSameCosts(beginChoice([priced], answers(5), usualGoal))).toBe(true);
    expect(haveSameCosts(beginChoice([priced, layout], answers(5, 6), usualGoal))).toBe(false);
  });

  it("ends where a replication has no value, or stands still", () => {
    const criterion = { ...goodParts, measure: "seconds per shot" };
    const { courses } = beginChoice([layout], answers(5), { ...usualGoal, criterion });
    expect(courses[0]).toMatchObject({
      observations: [],
      leftOut: "It makes no good part in a replication, and has no seconds per shot there.",
    });
    const standstill = { kind: "deadlock", seconds: 5, waiting: [] };
    const stuck = withChoiceAnswers(beginChoice([layout], answers(5), usualGoal), 0, [
      answerMade(2, { "good parts per hour": 5 }, { standstill }),
    ]);
    expect(stuck.courses[0]?.leftOut).toContain("deadlock");
    expect(stuck.courses[0]?.observations).toHaveLength(1);
  });
});
