// Stops on the critical path: a delay by a repair is attributed to the repair, and never to an idle operator.
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";

// By definition the critical path covers each tick once, and is "stopped" only while some resource is stopped [C].
it.each([
  ["two-shifts-one-color", ["run.length=5 d"]],
  ["stops-and-repairs", []],
  ["stops-and-repairs", ["crew.operators=1"]],
] as const)(
  "the critical path of %s %j is stopped no longer than the resources are, and covers the whole time",
  (name, set) => {
    const text = readFileSync(new URL(`../../../scenarios/${name}.yaml`, import.meta.url), "utf8");
    const { scenario, issues } = readScenario(text, { name, file: `${name}.yaml`, set: [...set] });
    expect(issues).toEqual([]);
    const plan = planCell(scenario!);
    for (const replication of [0, 1, 2]) {
      const { chain, stateTimes, fromTick, untilTick } = runCell(plan, { replication });
      const onChain = chain.filter(({ step }) => step === "stopped").reduce((sum, { ticks }) => sum + ticks, 0);
      const ofResources = stateTimes
        .filter(({ state }) => state === "stopped")
        .reduce((sum, { ticks }) => sum + ticks, 0);
      expect(ofResources).toBeGreaterThan(0);
      expect(onChain).toBeGreaterThan(0);
      expect(onChain).toBeLessThanOrEqual(ofResources);
      const covered = chain.reduce((sum, { ticks }) => sum + ticks, 0);
      expect(Math.abs(covered / (untilTick - fromTick) - 1)).toBeLessThan(0.01);
    }
  },
);
