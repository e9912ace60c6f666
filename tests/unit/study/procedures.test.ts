// Steps of a study and a comparison, with answers that are written down.
import { describe, expect, it } from "vitest";
import { bestLayouts, haveComparableCosts } from "#analysis/study/bestLayouts.ts";
import { isTypical, leadingInCycle } from "#analysis/study/firstShots.ts";
import { withPairedPrecision } from "#analysis/study/pairedPrecision.ts";
import { standstillIssue } from "#analysis/study/standstillIssue.ts";
import { nextWanted, outputWanted, type StudyState } from "#analysis/study/study.ts";
import { waitCause } from "#analysis/study/summarizeStates.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { answerMade, answersOf, pathOf } from "../../support/madeAnswers.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { studyMade } from "./madeStudy.ts";

const scenario: Scenario = { ...oneStation, run: { ...oneStation.run, replications: 10, precision: 0.01 } };
const stateOf = (values: readonly number[], more: Partial<StudyState> = {}): StudyState => ({
  scenario,
  answers: answersOf(values),
  sensitivity: "off",
  ...more,
});
const repeated = (count: number, even: number, odd = even) =>
  Array.from({ length: count }, (_, i) => (i % 2 === 0 ? even : odd));

describe("a wanted precision of a comparison", () => {
  const paired = (states: readonly StudyState[], against?: string) =>
    withPairedPrecision(states, against).map((state) => state.paired);

  it("is settled where all differences are precise, though each output varies", () => {
    // By hand: the difference is 5 in each replication.
    const states = [stateOf(repeated(10, 90, 110)), stateOf(repeated(10, 95, 115))];
    expect(paired(states)).toEqual([1, 2].map(() => ({ replications: 10, isSettled: true, isReached: true })));
  });

  it("asks all cells for as many replications as the least precise difference needs", () => {
    // Differences of 5 ± 10: more than twice as many, so that twice as many follow.
    const states = [stateOf(repeated(10, 100)), stateOf(repeated(10, 95, 115)), stateOf(repeated(10, 105))];
    expect(paired(states)).toEqual([1, 2, 3].map(() => ({ replications: 20, isSettled: false, isReached: false })));
    const next = withPairedPrecision(states);
    expect(outputWanted(next[0]!).map(({ replication }) => replication)).toEqual([
      11, 12, 13, 14, 15, 16, 17, 18, 19, 20,
    ]);
    // [C] t(0.975, n − 1) × 5.13 / √n ≤ 0.99 holds from n = 106 on; the width is a share of the base.
    const wide = [stateOf(repeated(100, 100)), stateOf(repeated(100, 100, 110))];
    const [found] = paired(
      wide.map((state) => ({ ...state, paired: { replications: 100, isSettled: false, isReached: false } })),
    );
    expect(found).toMatchObject({ isSettled: false, isReached: false });
    expect(Math.abs(found!.replications - 103)).toBeLessThanOrEqual(3);
  });

  it("waits for the replications that are asked for", () => {
    const states = [stateOf(repeated(10, 100)), stateOf(repeated(9, 100))];
    expect(paired(states)).toEqual([1, 2].map(() => ({ replications: 10, isSettled: false, isReached: false })));
    const standstill = { kind: "deadlock", seconds: 5, waiting: [] };
    const stuck = { ...stateOf(repeated(10, 100)), answers: [answerMade(1, {}, { standstill })] };
    expect(paired([stateOf(repeated(10, 100)), stuck])[0]).toMatchObject({ isSettled: false });
  });

  it("is none where none is wanted, or nothing is compared", () => {
    const { precision: _, ...run } = scenario.run;
    const unwanted = [1, 2].map(() => stateOf(repeated(10, 100), { scenario: { ...scenario, run } }));
    expect(withPairedPrecision(unwanted)).toBe(unwanted);
    const alone = [stateOf(repeated(10, 100))];
    expect(withPairedPrecision(alone)).toBe(alone);
    expect(withPairedPrecision([])).toEqual([]);
    expect(paired([stateOf(repeated(10, 1)), stateOf(repeated(10, 2))], "nothing")).toEqual([undefined, undefined]);
  });
});

describe("the replications of a study", () => {
  const wanted = (state: StudyState) => nextWanted(state).map(({ replication }) => replication);

  it("go on until the precision is reached, at most twice as many at a time", () => {
    expect(wanted(stateOf(repeated(8, 100)))).toEqual([9, 10]);
    expect(wanted(stateOf(repeated(10, 100)))).toEqual([]);
    expect(wanted(stateOf(repeated(10, 50, 150)))).toEqual([11, 12, 13, 14, 15, 16, 17, 18, 19, 20]);
    const open = { replications: 10, isSettled: false, isReached: false };
    expect(wanted(stateOf(repeated(10, 50, 150), { paired: open }))).toEqual([]);
    expect(wanted(stateOf(repeated(10, 50, 150), { paired: { ...open, replications: 12 } }))).toEqual([11, 12]);
  });
});

describe("the best layouts of a comparison", () => {
  const names = (sign?: 1 | -1, ...studies: readonly ReturnType<typeof studyMade>[]) =>
    bestLayouts(studies, "good parts per hour", sign).map((study) => study.scenario.name);
  const [low, high, near] = [
    studyMade("low", [50, 51, 50, 51]),
    studyMade("high", [100, 101, 102, 103]),
    studyMade("near", [99, 103, 100, 106]),
  ];

  it("are those that can be the best, the largest mean first", () => {
    expect(names(1, low, high, near)).toEqual(["near", "high"]);
    expect(names(-1, low, high, near)).toEqual(["low"]);
    expect(bestLayouts([low, high], "shots per hour")).toEqual([]);
  });

  it("have costs to compare where all of them are sums of the same items", () => {
    const costs = { currency: "EUR" };
    const [one, two] = ["a", "b"].map((name) => studyMade(name, [1], { costs, perHour: [1] }));
    const foreign = studyMade("c", [1], { costs: { currency: "USD" }, perHour: [1] });
    expect(haveComparableCosts([one!, two!])).toBe(true);
    expect(haveComparableCosts([one!, foreign])).toBe(false);
    expect(haveComparableCosts([low, one!])).toBe(false);
    expect(haveComparableCosts([])).toBe(false);
  });
});

describe("a typical stretch of shots", () => {
  const bottleneck = [
    pathOf(
      "a",
      ["a"],
      [
        { role: "stop.stand", share: 0.5 },
        { role: "mold.cool", share: 0.4 },
      ],
    ),
  ];
  const steps = bottleneck[0]!.steps.map((step, i) => ({ ...step, slackSeconds: i === 0 ? null : 0 }));
  const leading = leadingInCycle({ bottleneck: [{ ...bottleneck[0]!, steps }] });

  it("has at least half of the share of the step that leads in the cycle", () => {
    expect(leading?.step).toBe("mold.cool");
    expect([0.2, 0.19, null].map((leadingShare) => isTypical({ leadingShare }, leading))).toEqual([true, false, false]);
    expect(isTypical({ leadingShare: null })).toBe(true);
    expect(leadingInCycle({ bottleneck })).toBeUndefined();
  });
});

describe("a standstill", () => {
  const task = { replication: 3 };

  it("names each wait with what it lacks", () => {
    const waiting = [
      { process: "a", step: "close", lacks: "the valve" },
      { process: "b", step: "open", lacks: "" },
      { process: "c", step: "remove", lacks: "operators" },
    ];
    expect(standstillIssue(oneStation, { task, standstill: { kind: "deadlock", seconds: 5, waiting } }).message).toBe(
      "fixed has a deadlock after 5 s of replication 3: a cannot close, because it lacks: the valve; c cannot remove, because it lacks: operators",
    );
    const loop = standstillIssue(oneStation, { task, standstill: { kind: "loop", seconds: 0, waiting: [] } });
    expect(loop).toMatchObject({
      code: "zero-time-loop",
      message: "fixed repeats steps without taking time, after 0 s of replication 3",
    });
  });
});

describe("the cause of a wait", () => {
  const continuous = { delivery: { kind: "continuous", removal: "pin" } } as never;

  it("is what lacks, in continuous extrusion what that means there", () => {
    const cause = (state: string, of = oneStation as never) => waitCause(state, "waiting", of);
    expect(cause(stateNames.awaitingTurn)).toBe("the shot is full and another station's turn");
    expect(cause(stateNames.awaitingTurn, continuous)).toBe("another mold is at the die");
    expect(cause(stateNames.awaitingTakeaway)).toBe("no room after the mold");
    expect(cause(stateNames.awaitingTakeaway, continuous)).toBe("the mask still holds the parts before");
    expect(cause("a step of one's own")).toBeNull();
    expect(waitCause(stateNames.awaitingTurn, "working", oneStation)).toBeNull();
  });
});
