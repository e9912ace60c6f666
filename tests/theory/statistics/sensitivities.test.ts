// Holds elasticities within the budget to all paired reruns of the leading step, and to the derivative of a closed form.
import { describe, expect, it, test } from "vitest";
import { firstCases } from "../../support/caseCount.ts";
import { elasticityMethod } from "#analysis/bottleneck/elasticity.ts";
import type { BottleneckStep } from "#analysis/bottleneck/bottleneck.ts";
import { leadingSteps, scalesOf } from "#analysis/bottleneck/leadingSteps.ts";
import type { Sensitivity } from "#analysis/bottleneck/reruns.ts";
import { centralSlope } from "#analysis/bottleneck/rerunSlopes.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { runStudy, settleInOneCall } from "#analysis/study/study.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";
import { always, exponential, takeawayCell } from "../../support/takeawayCell.ts";

function stepOf(scenario: Scenario, step: string, sensitivity?: Sensitivity): BottleneckStep {
  const outcome = runStudy(scenario, sensitivity);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study.bottleneck.flatMap(({ steps }) => steps).find((each) => each.step === step)!;
}

describe("the elasticity of the leading step", () => {
  const cells = [
    ["one-operator-four-molds", "run.length=8 h"],
    ["stops-and-repairs", "run.length=16 h"],
    ["slow-trimmer", "run.length=4 h"],
    ["two-shifts-one-color", "run.length=2 d"],
    ["cost-of-a-thousand", "run.length=8 h"],
    ["one-operator", "run.length=8 h"],
    ["one-operator-four-molds", "crew.operators=2"],
    ["three-station", "valve.dispatch=priority"],
  ] as const;
  test.each(firstCases(cells, 1))("of %s with %s agrees with all paired reruns", (name, set) => {
    const given = scenarioOf(shippedText(name), name, ["run.replications=20", set]);
    const { scenario } = settleInOneCall(given);
    expect(elasticityMethod(scenario)).toBe("difference");
    const run = replicationRunner(scenario);
    const replications = Array.from({ length: 20 }, (_, i) => i + 1);
    const [leading] = leadingSteps(
      scenario,
      replications.map((replication) => run({ replication, scale: null })),
    );
    const { shorter, longer } = scalesOf(leading!);
    const [less, more] = [shorter, longer].map((scale) =>
      replications.map((replication) => run({ replication, scale })),
    );
    const all = centralSlope(less!, more!)!;
    const { elasticity } = stepOf(given, leading!.step);
    expect(elasticity!.count).toBeLessThanOrEqual(10);
    expect(all.mean).toBeLessThan(-0.1);
    expect(Math.abs(elasticity!.mean - all.mean)).toBeLessThanOrEqual(elasticity!.halfWidth! + all.halfWidth!);
  });
});

describe("one operator who removes the parts of eight molds", () => {
  // Machines running, constant service p in units of the mean running time: Ashcroft, The productivity of several machines under the
  // care of one operator, J. R. Stat. Soc. B 12 (1950) 145 [M+C]; N = 8, p = 0.1 gives 6.8532. Output is running molds / cooling.
  const running = (molds: number, p: number): number => {
    let [sum, product] = [1, 1];
    for (let r = 1; r < molds; r++) {
      product *= ((molds - r) / r) * (Math.exp(r * p) - 1);
      sum += product;
    }
    return (molds * sum) / (1 + molds * p * sum);
  };
  const one = { recharge: 0, drop: 0, close: 0, cool: 0, remove: 0, by: "operator" } as const;
  const station = { cool: exponential(60), remove: { time: always(6), by: "operator" as const } };
  const cell = takeawayCell({ stations: Array.from({ length: 8 }, () => one), shift: 0, operators: 1 }, [], {
    station,
  });
  const run = { ...cell.run, length: 200_000, warmup: 10_000, seed: "eight", replications: 20 };
  const scenario: Scenario = { ...cell, run };
  const change = 1e-4;
  const ofRemoval = Math.log(running(8, 0.1 * (1 + change)) / running(8, 0.1 * (1 - change))) / (2 * change);

  it("has Ashcroft's number of running molds", () => {
    expect(running(8, 0.1)).toBeCloseTo(6.8532, 4);
  });

  const sizes = [
    ["few", 0.08],
    ["full", 0.02],
  ] as const;
  test.each(firstCases(sizes, 1))("has the elasticities of the closed form, %s", (sensitivity, limit) => {
    const removal = stepOf(scenario, "remove", sensitivity).elasticity!;
    expect(Math.abs(removal.mean - ofRemoval), `${removal.mean} ${ofRemoval}`).toBeLessThanOrEqual(removal.halfWidth!);
    expect(removal.halfWidth).toBeLessThan(limit);
    const cooling = stepOf(scenario, "cool", sensitivity).elasticity!;
    expect(Math.abs(cooling.mean - (-1 - ofRemoval)), String(cooling.mean)).toBeLessThanOrEqual(cooling.halfWidth!);
  });
});
