// What one change buys, where the cycle of one station with fixed times gives it exactly.
import { describe, expect, it } from "vitest";
import { changesOf } from "../../support/changedCell.ts";

const hours = 100;

/** Of 100 hours after a warm-up of 1 hour. */
const text = (recharge: number, cool: number): string => `format: 1
product: { partMass: 42 g, flash: 30 % of part }
delivery: { kind: reciprocating-screw, recharge: ${recharge} s, drop: 1.8 s }
valve: { shift: 0.25 s }
stations:
  cavities: 2
  steps: { close: 0.6 s, blow: 0.5 s, cool: ${cool} s, vent: 0.5 s, open: 0.6 s, remove: 0.8 s }
run: { length: ${hours + 1} h, replications: 4, seed: test, warmup: 1 h }`;

/** Seconds a shot: the ring of the mold, or that of the screw, which recharges against the neutral valve. */
function period(recharge: number, cool: number, { shift = 0.25, remove = 0.8 } = {}): number {
  const mold = shift + 1.8 + 0.6 + 0.5 + cool + 0.5 + 0.6 + remove;
  const screw = shift + 1.8 + shift + recharge;
  return Math.max(mold, screw);
}

/** Of a cell with two cavities [C]. */
const perHour = (seconds: number): number => (2 * 3600) / seconds;
/** Each of the two runs ends with a whole shot of two parts or without it. */
const endShots = (2 * 2) / hours;

describe("what one change buys with fixed times", () => {
  it.each([
    ["the mold", 4, 8],
    ["the screw", 14, 8],
    ["the screw, by less than 5 % of the cooling", 10.9, 8],
    ["the mold, by less than 10 % of the recharge", 10.5, 8],
  ])("is what the slower ring says where it is %s", (_, recharge, cool) => {
    const { rows, unit, notRun } = changesOf(text(recharge, cool));
    const before = perHour(period(recharge, cool));
    const expected: Readonly<Record<string, number>> = {
      "cooling −5 %": perHour(period(recharge, 0.95 * cool)) - before,
      "screw 10 % faster": perHour(period(recharge / 1.1, cool)) - before,
      "valve shift −0.1 s": perHour(period(recharge, cool, { shift: 0.15 })) - before,
      "removal −10 %": perHour(period(recharge, cool, { remove: 0.72 })) - before,
    };
    expect({ unit, notRun }).toEqual({ unit: "good parts per hour", notRun: [] });
    const found = Object.fromEntries(rows.map(({ name, gain }) => [name, gain.mean]));
    for (const [name, gain] of Object.entries(expected)) {
      expect(Math.abs(found[name]! - gain), name).toBeLessThanOrEqual(endShots);
    }
    const order = rows.map(({ gain }) => gain.mean);
    expect(order).toEqual(order.toSorted((a, b) => b - a));
  });

  it("answers whether it is the screw or the cooling", () => {
    const gainOf = (recharge: number, wanted: string): readonly [string, boolean] => {
      const row = changesOf(text(recharge, 8)).rows.find(({ name }) => name === wanted)!;
      return [row.verdict, row.relativeGain! > 0.02];
    };
    expect(gainOf(4, "cooling −5 %")).toEqual(["more", true]);
    expect(gainOf(4, "screw 10 % faster")).toEqual(["no difference seen", false]);
    expect(gainOf(14, "cooling −5 %")).toEqual(["no difference seen", false]);
    expect(gainOf(14, "screw 10 % faster")).toEqual(["more", true]);
  });
});
