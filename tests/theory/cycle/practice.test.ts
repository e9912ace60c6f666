// Holds a reciprocating-screw cell to facts of common practice, which have no published source.
import { describe, expect, it, test } from "vitest";
import { firstShots } from "#analysis/study/firstShots.ts";
import { stepTimes } from "#analysis/ideal/stepTimes.ts";
import type { TimelineInterval } from "#cell/records/timelineRecord.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";

// Common practice, no published source: one pound delivered in three seconds is a delivery rate of 1,200 lb/h.
test("one pound in three seconds is a delivery rate of 1,200 lb/h", () => {
  const text = `format: 1
product: { partMass: 1 lb, flash: 0 g }
delivery: { kind: reciprocating-screw, recharge: 9 s, deliveryRate: 1200 lb/h }
valve: { shift: 0.3 s }
stations:
  count: 1
  cavities: 1
  steps: { close: 1 s, blow: 1 s, cool: 20 s, vent: 1 s, open: 1 s, remove: { time: 1 s } }
`;
  const { scenario, issues } = readScenario(text, { name: "pound", file: "pound.yaml" });
  expect(issues).toEqual([]);
  const drop = stepTimes(scenario!).find(({ step }) => step === "drop");
  // Masses are whole milligrams: 453.592 g instead of 453.59237 g.
  expect(drop?.seconds).toBeCloseTo(3, 5);
});

function overlap(one: TimelineInterval, other: TimelineInterval): number {
  return Math.max(0, Math.min(one.end, other.end) - Math.max(one.start, other.start));
}

describe("two stations on one screw", () => {
  const { timeline } = firstShots(scenarioOf(shippedText("two-station"), "two", ["run.warmup=1 min"]));
  const intervals = timeline?.intervals ?? [];
  const of = (resource: string, state: string): readonly TimelineInterval[] =>
    intervals.filter((each) => each.resource === resource && each.state === state);
  const recharging = of("plasticator", "recharging");

  // Common practice, no published source: a valve in neutral blocks every port, so that the melt pushes the screw back.
  it("recharge only while the valve is in neutral, and deliver only while it is open to a single port", () => {
    expect(recharging.length).toBeGreaterThan(2);
    for (const recharge of recharging) {
      const neutral = of("valve", "neutral").reduce((sum, each) => sum + overlap(recharge, each), 0);
      expect(neutral).toBeCloseTo(recharge.end - recharge.start, 9);
    }
    const open = intervals.filter(({ resource, state }) => resource === "valve" && state.startsWith("open to "));
    for (const delivery of of("plasticator", "delivering")) {
      const through = open.filter((each) => overlap(delivery, each) > 0);
      expect(through).toHaveLength(1);
      expect(overlap(delivery, through[0]!)).toBeCloseTo(delivery.end - delivery.start, 9);
    }
  });

  // Common practice, no published source: the screw recharges while a mold closes, blows or cools.
  it.each(["closing", "blowing", "cooling"])("recharge while a mold is %s", (state) => {
    const molds = [...of("left", state), ...of("right", state)];
    const together = recharging.map((recharge) => molds.reduce((sum, mold) => sum + overlap(recharge, mold), 0));
    expect(Math.max(...together)).toBeGreaterThan(0.2);
  });
});
