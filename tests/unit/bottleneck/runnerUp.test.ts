// The slack of the valve, which sets the pace alone only where a chamber gives the shots.
import { describe, expect, it } from "vitest";
import { slackOfGroup } from "#analysis/bottleneck/runnerUp.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import type { DeliverySpec } from "#scenario/scenario.ts";
import { fixedCell } from "../../support/fixedCell.ts";

const station = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 };

function slackOfValve(delivery: DeliverySpec): number | null {
  const cell = fixedCell({ stations: [station, station], shift: 0.25, delivery });
  return slackOfGroup("valve", cell, idealCycle(cell));
}

describe("the slack of the valve", () => {
  it("is that of a turn without the recharge, where a common chamber gives the shots", () => {
    // By hand: a mold's turn of 13.05 s is 6.525 s a shot; the valve takes 0.25 + 1.8 + 0.25 s of it.
    const slack = slackOfValve({ kind: "accumulator-head", accumulator: "common", shotCapacity: 0.2 });
    expect(slack).toBeCloseTo(6.525 - 2.3, 9);
  });

  it("is none with a reciprocating screw, whose turn has the valve's in it", () => {
    const screw = { kind: "reciprocating-screw", rechargeStarts: "valve-neutral", shotFor: "served" } as const;
    expect(slackOfValve(screw)).toBeNull();
  });
});
