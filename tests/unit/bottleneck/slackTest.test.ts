// The bisection for the slack of a step, with answers that are written down.
import { describe, expect, it } from "vitest";
import {
  beginSlackTest,
  concludeSlackTest,
  nextSlackRuns,
  withSlackAnswers,
  type SlackTest,
} from "#analysis/bottleneck/slackTest.ts";
import { slackTargets } from "#analysis/bottleneck/slackTargets.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { answerMade, pathOf } from "../../support/madeAnswers.ts";
import { oneStation } from "../../support/madeOrder.ts";

/** One station of 13 s a turn. */
const bottleneck = [
  pathOf("stations", ["station 01"], [{ role: "mold.cool", share: 0.6 }]),
  pathOf("plasticator", ["plasticator"], [{ role: "screw.recharge", share: 0.4 }]),
];
const subject = (values: readonly (number | null)[]) => ({
  scenario: oneStation,
  ideal: idealCycle(oneStation),
  bottleneck,
  measures: ["side", "cell"].map((resource) => ({
    resource,
    measure: "good parts per hour",
    values: resource === "cell" ? values : [7],
  })),
});
const longerBy = (test: SlackTest) =>
  nextSlackRuns(test).map(({ replication, scale }) => [replication, scale?.longerBy]);

/** Output falls by a hundredth where a step is longer by more than its slack. */
function tested(begun: SlackTest, slackOf: (step: string, replication: number) => number, fallen = 0.98): SlackTest {
  let test = begun;
  for (let runs = nextSlackRuns(test); runs.length > 0; runs = nextSlackRuns(test)) {
    const answers = runs.map(({ replication, scale }) => {
      const isLonger = scale!.longerBy! > slackOf(scale!.steps[0]!.step, replication);
      return answerMade(replication, { "good parts per hour": 100 * (isLonger ? fallen : 1) });
    });
    test = withSlackAnswers(test, answers);
  }
  return test;
}

describe("the test of slack", () => {
  it("runs each step in at most five replications that make parts, first 1 % of a turn longer", () => {
    const test = beginSlackTest(subject([100, 0, null, 100, 100, 100, 100, 100]));
    expect(longerBy(test)).toEqual([1, 4, 5, 6, 7, 1, 4, 5, 6, 7].map((replication) => [replication, 0.13]));
    expect(nextSlackRuns(test)[0]?.scale).toMatchObject({
      factor: 1,
      steps: [{ resource: "station 01", step: "mold.cool" }],
    });
    expect(beginSlackTest({ ...subject([]), measures: [] }).brackets).toEqual([]);
  });

  it("doubles until output falls, then halves, in whole milliseconds", () => {
    let test = beginSlackTest({ ...subject([100]), bottleneck: bottleneck.slice(0, 1) });
    const seen: number[] = [];
    const falls = [false, false, true, false, true];
    for (const hasFallen of falls) {
      seen.push(nextSlackRuns(test)[0]!.scale!.longerBy!);
      test = withSlackAnswers(test, [answerMade(1, { "good parts per hour": hasFallen ? 99 : 99.1 })]);
    }
    // By hand: 0.13, 0.26, 0.52 s; between 0.26 and 0.52 s the middle, then between 0.39 and 0.52 s.
    expect(seen).toEqual([0.13, 0.26, 0.52, 0.39, 0.455]);
    expect(nextSlackRuns(test)[0]?.scale?.longerBy).toBe(0.423);
    expect(concludeSlackTest(test)[0]).toMatchObject({ atLeast: 0.39, pairs: 1, seconds: { mean: 0.4225 } });
  });

  it("finds the slack of each step, the least first", () => {
    const test = tested(beginSlackTest(subject([100, 100])), (step, replication) =>
      step === "mold.cool" ? 2 + replication : 0.5,
    );
    const [recharge, cooling] = concludeSlackTest(test);
    expect([recharge?.step, cooling?.step]).toEqual(["screw.recharge", "mold.cool"]);
    expect(Math.abs(recharge!.seconds!.mean - 0.5)).toBeLessThan(0.0025);
    // By hand: 3 and 4 s in the two replications, to half a hundredth.
    expect(Math.abs(cooling!.seconds!.mean - 3.5)).toBeLessThan(0.0175);
    expect(cooling).toMatchObject({ pairs: 2, role: "mold.cool", resources: ["station 01"] });
    expect(cooling!.atLeast).toBeLessThan(3.0001);
    expect(cooling!.atLeast).toBeGreaterThan(2.98);
  });

  it("ends at a whole turn, and has no slack where output did not fall in every pair", () => {
    const test = tested(beginSlackTest(subject([100, 100])), (step, replication) =>
      step === "mold.cool" || replication === 1 ? 99 : 1,
    );
    const found = concludeSlackTest(test);
    expect(found.map(({ step, seconds }) => [step, seconds])).toEqual([
      ["screw.recharge", null],
      ["mold.cool", null],
    ]);
    expect(found[1]?.atLeast).toBe(13);
    expect(found[0]?.atLeast).toBeLessThan(1.001);
  });
});

describe("the steps whose slack is tested", () => {
  const names = (...all: Parameters<typeof pathOf>[]) =>
    slackTargets(all.map((each) => pathOf(...each))).map(({ step }) => step);

  it("are those that everybody asks about, then the largest shares of the path", () => {
    const steps = [
      { role: "mold.close", share: 0.1 },
      { role: "mold.open", share: 0 },
      { role: "mold.blow", share: 0.3 },
      { role: "mold.cool", share: 0 },
      { role: "stop.stand", share: 0.5 },
      { role: "change.work", share: 0.5 },
      { role: "screw.purge", share: 0.5 },
      { role: "mold.clear", share: 0.5 },
    ];
    expect(names(["a", ["a"], steps], ["b", ["b"], [{ role: "screw.recharge", share: 0.01 }]])).toEqual([
      "screw.recharge",
      "mold.cool",
      "mold.blow",
      "mold.close",
    ]);
  });

  it("are at most six, each with all its time", () => {
    const steps = ["1", "2", "3", "4", "5", "6", "7"].map((role, i) => ({ role, share: 0.1 + i / 100 }));
    expect(names(["a", ["a"], steps])).toEqual(["7", "6", "5", "4", "3", "2"]);
    // The step "1" of one resource stands beneath two owners.
    const more = [{ role: "1", share: 0.5, resources: ["a"] }];
    expect(names(["a", ["a"], steps], ["b", ["b"], more])[0]).toBe("1");
    // A task of an operator is asked about, whatever its share.
    const shovel = pathOf(
      "c",
      ["c"],
      [
        { role: "crew.work", share: 0 },
        { role: "mold.open", share: 0.1 },
      ],
    );
    const [task, open] = shovel.steps;
    const tasks = { ...shovel, steps: [open!, { ...task!, task: "packing" as never }] };
    expect(slackTargets([tasks]).map(({ step }) => step)).toEqual(["crew.work", "mold.open"]);
    const [recharge] = slackTargets([pathOf("b", ["b"], [{ role: "screw.recharge", share: 0.1 }])]);
    expect(recharge?.members).toHaveLength(2);
  });
});
