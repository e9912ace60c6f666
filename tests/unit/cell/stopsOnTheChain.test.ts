// What a repair by an operator holds up is bound by the repair, and before that by what the stop interrupted: never by an idle hand.
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";

// The chain tiles the time once; while it is "stopped" some resource stands still (law of the critical path, no published source).
it.each([
  ["two-shifts-one-color", ["run.length=5 d"]],
  ["stops-and-repairs", []],
  ["stops-and-repairs", ["crew.operators=1"]],
] as const)("of %s %j is not longer stopped than its resources are, and covers the whole time", (name, set) => {
  const text = readFileSync(new URL(`../../../scenarios/${name}.yaml`, import.meta.url), "utf8");
  const { scenario, issues } = readScenario(text, { name, file: `${name}.yaml`, set: [...set] });
  expect(issues).toEqual([]);
  const plan = planCell(scenario!);
  for (const replication of [0, 1, 2]) {
    const { chain, stateTimes, fromTick, untilTick } = runCell(plan, { replication });
    const onChain = chain.filter(({ step }) => step === "stopped").reduce((sum, { ticks }) => sum + ticks, 0);
    const stood = stateTimes.filter(({ state }) => state === "stopped").reduce((sum, { ticks }) => sum + ticks, 0);
    expect(stood).toBeGreaterThan(0);
    expect(onChain).toBeGreaterThan(0);
    expect(onChain).toBeLessThanOrEqual(stood);
    const covered = chain.reduce((sum, { ticks }) => sum + ticks, 0);
    expect(Math.abs(covered / (untilTick - fromTick) - 1)).toBeLessThan(0.01);
  }
});
