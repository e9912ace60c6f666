// What a change may gain at most, and which changes are run first, by hand.
import { describe, expect, it } from "vitest";
import { boundOf, rankOf } from "#analysis/changes/prospects.ts";
import type { Wish } from "#analysis/changes/wish.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { baseMade, pathOf } from "../../support/madeAnswers.ts";

/** Two stations, observed for two hours. */
const station = oneStation.stations[0]!;
const scenario = {
  ...oneStation,
  stations: ["a", "b"].map((name) => ({ ...station, name })),
  operators: 1,
  run: { ...oneStation.run, length: 9000, warmup: 1800 },
};
const bottleneck = [
  pathOf(
    "stations",
    ["a", "b"],
    [
      { role: "mold.cool", share: 0.4, resources: ["a"] },
      { role: "mold.cool", share: 0.2, resources: ["b"] },
    ],
  ),
  pathOf("plasticator", ["plasticator"], [{ role: "screw.recharge", share: 0.1 }]),
  pathOf("crew", ["operator 1"], [{ role: "crew.walk", share: 0.3 }]),
];
const hours = (mean: number) => meanInterval([mean]);
const stops = [
  { resource: "a", stop: "jam", hours: hours(0.2) },
  { resource: "b", stop: "jam", hours: hours(0.4) },
  { resource: "plasticator", stop: "heater", hours: hours(0.1) },
];
const made = { "parts per hour": [500] };
const base = baseMade(scenario, made, { bottleneck, stops });
const wish = (prospect: Wish["prospect"], cause?: Wish["cause"]) => ({
  wish: { name: "", alternatives: [], prospect, ...(cause ? { cause } : {}) },
});
const cooling = wish({ steps: ["mold.cool"], share: 0.05 });

describe("the rank of a change", () => {
  it("is its share of the critical path or of the time of a stop", () => {
    expect(rankOf(wish({ resources: ["b", "c"], share: 0.5 }), base)).toBeCloseTo(0.3, 12);
    expect(rankOf(wish({ isCrew: true, share: 0.5 }), base)).toBeCloseTo(0.15, 12);
    // A stop of one of two stations stops half of the cell: (0.2 / 2 + 0.4 / 2) of two hours.
    expect(rankOf(wish({ stop: "jam", share: 0.5 }), base)).toBeCloseTo(0.075, 12);
    expect(rankOf(wish({ stop: "heater", share: 1 }), base)).toBeCloseTo(0.05, 12);
    expect(rankOf(wish({ unknown: true }), base)).toBe(1);
  });

  it("is higher for steps that may gain a hundredth", () => {
    expect(rankOf(cooling, base)).toBeCloseTo(1 + 0.05 * 0.6, 12);
    expect(rankOf(wish({ steps: ["mold.cool"], of: ["b"], share: 0.05 }), base)).toBeCloseTo(1 + 0.05 * 0.2, 12);
    expect(rankOf(wish({ steps: ["mold.cool"], of: ["b"], share: 0.04 }), base)).toBeCloseTo(0.04 * 0.2, 12);
    expect(rankOf(wish({ steps: ["mold.cool"], of: ["b", "c"], share: 0.1 }), base)).toBeCloseTo(1.02, 12);
    expect(rankOf(wish({ steps: ["screw.recharge", "crew.walk"], share: 0.1 }), base)).toBeCloseTo(1.04, 12);
  });

  it("is highest for causes of lost parts", () => {
    const seldom = wish({ stop: "heater", share: 0 }, { name: "heater", kind: "stop" });
    expect(rankOf(seldom, base)).toBe(2);
    expect(rankOf(seldom, base)).toBeGreaterThan(rankOf(cooling, base));
    expect(rankOf(seldom, base)).toBeGreaterThan(rankOf(wish({ unknown: true }), base));
  });
});

describe("the bound of a gain", () => {
  it("is the time saved at the pace of the ideal cycle", () => {
    // By hand: 3 % of the time is saved and 97 % remain; the two molds share the screw, 7 s a shot of two parts.
    expect(base.ideal.secondsPerShot).toBeCloseTo(7, 9);
    expect(boundOf(cooling, base)).toBeCloseTo((0.03 / 0.97) * (7200 / 7 / 500), 9);
  });

  it("counts the parts of the whole run with a calendar", () => {
    const calendar = { begins: "", clockChanges: [], off: [], operators: [], shifts: [], breaks: "stop" } as const;
    // By hand: 7,200 s of planned time make 2 × 7,200 / 7 parts, of which 2 × 500 are made.
    const week = baseMade({ ...scenario, calendar }, made, { bottleneck });
    expect(boundOf(cooling, week)).toBeCloseTo((0.03 / 0.97) * (14_400 / 7 / 1000), 9);
  });

  it("never takes the cell for slower than it is", () => {
    const fast = baseMade(scenario, { "parts per hour": [2000] }, { bottleneck });
    expect(boundOf(cooling, fast)).toBeCloseTo(0.03 / 0.97, 12);
  });

  it("is not known for other changes, and without parts", () => {
    expect(boundOf(wish({ resources: ["a"], share: 0.5 }), base)).toBeNull();
    expect(boundOf(cooling, baseMade(scenario, { "parts per hour": [0] }, { bottleneck }))).toBeNull();
  });
});
