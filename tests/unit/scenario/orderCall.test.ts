// The options of an order as settings of the scenario, and their faults.
import { describe, expect, it } from "vitest";
import { parseChance } from "#scenario/order/chanceText.ts";
import { issueOfOrder, readOrderCall } from "#scenario/order/orderCall.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { shippedText } from "../../support/reported.ts";

describe("the options of an order", () => {
  it("become settings in a fixed order", () => {
    const call = {
      due: "5 d",
      order: ["7 parts", "8 parts of cap"],
      start: "2026-11-30 07:00",
      shifts: "1 x 8 h, mon",
    };
    const { settings, issues } = readOrderCall(call);
    expect(issues).toEqual([]);
    expect(settings.map(({ option, setting }) => `${option} ${setting}`)).toEqual([
      '--shifts calendar={ from: 2026-11-30, at: "07:00", shifts: [{ days: [mon], start: "06:00", end: "14:00" }] }',
      '--order orders=[{ quantity: 7 parts }, { quantity: 8 parts, product: "cap" }]',
      '--due orders.*.due="5 d"',
    ]);
  });

  it("name a missing start, and drop a due date whose orders are wrong", () => {
    const { settings, issues } = readOrderCall({ shifts: "1 x 8 h, mon", order: ["many"], due: "5 d" });
    expect(settings).toEqual([]);
    expect(issues.map(({ option, code }) => [option, code])).toEqual([
      ["--shifts", "start-missing"],
      ["--order", "not-a-number"],
    ]);
  });

  it("name themselves where the reading refuses their settings", () => {
    const { settings } = readOrderCall({ order: ["7 parts of cap"], due: "5 d" });
    const set = [...settings.map(({ setting }) => setting), "valve.shift=-1 s"];
    const text = shippedText("order-by-friday");
    const { issues } = readScenario(text, { name: "a", file: "a.yaml", set });
    const named = issues.flatMap((issue) => issueOfOrder(issue, settings) ?? []);
    expect(named.map(({ option, value, code }) => [option, value, code])).toEqual([
      ["--order", "7 parts of cap", "order-product"],
    ]);
    // The other setting is none of theirs.
    expect(issues.length).toBeGreaterThan(named.length);
  });
});

describe("a wanted chance", () => {
  it.each([
    ["95 %", 0.95],
    ["80.5 %", 0.805],
    ["99.9 %", 0.999],
  ])("%s is %d", (text, share) => {
    expect(parseChance(text)).toBeCloseTo(share, 12);
  });

  it.each(["0 %", "100 %", "0.8", "often", ""])("is not %s", (text) => {
    expect(parseChance(text)).toMatchObject({ code: "chance-range" });
  });
});
