// The answer of a replication: shares of the observed time, and the stops that its runs control.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { controlledStops } from "#analysis/study/stopControl.ts";
import { widened, meanInterval, tFactor } from "#analysis/statistics/interval.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { shotSpreads } from "#analysis/study/shotSpread.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";

function shipped(name: string, ...set: readonly string[]): Scenario {
  const text = readFileSync(`scenarios/${name}.yaml`, "utf8");
  return readSettled(text, { name, file: `${name}.yaml`, set: ["run.warmup=10 min", ...set] }).scenario!;
}

const answerTo = (scenario: Scenario, replication = 1) => replicationRunner(scenario)({ replication, scale: null });

describe("the answer of a replication", () => {
  it("has the longest active periods as shares that cover the observed time once", () => {
    const { longestActive } = answerTo(scenarioOf(cellText(2)));
    for (const { sole, shifting } of longestActive) expect([sole >= 0, sole + shifting <= 1]).toEqual([true, true]);
    const sum = longestActive.reduce((total, { sole, shifting }) => total + sole + shifting / 2, 0);
    expect(sum).toBeGreaterThan(0.98);
    expect(sum).toBeLessThan(1 + 1e-9);
  });

  it("gives demold temperatures within the limit no remedy", () => {
    const scenario = shipped("two-station", "run.length=1 h");
    const demold = shotSpreads(scenario, [answerTo(scenario)]).filter(
      ({ quantity }) => quantity === "demold temperature",
    );
    expect(demold.map(({ beyond, remedy }) => [beyond, remedy])).toEqual([
      [0, ""],
      [0, ""],
    ]);
  });

  it("is controlled for rare stops from two replications on", () => {
    const scenario = shipped("stops-and-repairs", "run.length=2 h");
    const answers = [1, 2].map((replication) => answerTo(scenario, replication));
    expect(controlledStops(scenario, answers.slice(0, 1))).toEqual([]);
    expect(controlledStops(scenario, answers).length).toBeGreaterThan(0);
  });
});

describe("an interval with a standard error that its values do not show", () => {
  const plain = meanInterval([1, 2, 4]);

  it.each([0, 1, 2.5])("adds it in the square: %d", (unseen) => {
    const wanted = Math.hypot(plain.halfWidth!, tFactor(0.95, 3) * unseen);
    expect(widened(plain, unseen).halfWidth).toBeCloseTo(wanted, 12);
  });
});
