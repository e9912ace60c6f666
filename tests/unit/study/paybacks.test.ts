// The payback of a layout, by hand, with studies of which output and cost are written down.
import { describe, expect, it } from "vitest";
import { pairsAgainst } from "#analysis/study/against.ts";
import { paybacks } from "#analysis/study/payback.ts";
import type { CostSpec } from "#scenario/scenario.ts";
import { studyMade } from "./madeStudy.ts";

const plant = (name: string, good: readonly number[], perHour: readonly number[], more: Partial<CostSpec> = {}) =>
  studyMade(name, good, { costs: { currency: "EUR", ...more }, perHour });
const base = plant("base", [100, 100], [50, 50], { investment: 1000 });
const payback = (...args: Parameters<typeof plant>) => paybacks([[base, plant(...args)]])[0];

describe("the payback of a layout", () => {
  // By hand: a part costs 0.50 before and 0.40, 0.42 after; gains of 10 and 8 an hour on 100 parts.
  it("is the extra investment over the gain, with the ends of its interval", () => {
    const found = payback("other", [200, 200], [80, 84], { investment: 10_000 });
    expect(found).toMatchObject({ rule: "saving", extraInvestment: 9000, verdict: "no gain seen", hours: null });
    expect(found?.gain).toBeCloseTo(9, 9);
    // [C] t(0.975, 1) = 12.7062, sd √2, so that the half width is 12.7062.
    expect(found?.halfWidth).toBeCloseTo(12.7062, 3);
    expect(found?.shortest).toBeCloseTo(9000 / 21.7062, 1);
    expect(found?.longest).toBeNull();
    const clear = payback("other", [200, 200], [80, 80.2], { investment: 10_000 });
    // Gains of 10 and 9.9: 9.95 ± 0.635.
    expect([clear?.verdict, clear?.currency, clear?.base, clear?.other]).toEqual(["pays back", "EUR", "base", "other"]);
    expect(clear?.hours).toBeCloseTo(9000 / 9.95, 6);
    expect(clear?.shortest).toBeCloseTo(9000 / (9.95 + 0.63531), 2);
    expect(clear?.longest).toBeCloseTo(9000 / (9.95 - 0.63531), 2);
  });

  it("counts the parts that both make", () => {
    // By hand: 0.10 less for each of 40 parts.
    expect(payback("small", [40, 40], [16, 16], { investment: 2000 })?.gain).toBeCloseTo(4, 9);
  });

  it("is none without gain, and nothing where it costs no more", () => {
    const same = { investment: 2000 };
    expect(payback("dear", [100, 100], [60, 60], same)).toMatchObject({ verdict: "no payback", hours: null });
    expect(payback("even", [100, 100], [50, 50], same)).toMatchObject({ verdict: "no payback", gain: 0 });
    expect(payback("cheap", [100, 100], [40, 40], { investment: 1000 })?.verdict).toBe("nothing to pay back");
    expect(payback("unknown", [100, 100], [40, 40])).toBeUndefined();
    expect(payback("idle", [0, 0], [40, 40], same)).toBeUndefined();
  });

  it("has no interval with one pair", () => {
    const one = plant("one", [100], [50], { investment: 1000 });
    const found = paybacks([[one, plant("other", [100], [40], { investment: 1500 })]])[0];
    expect(found).toMatchObject({ verdict: "one pair, no interval", halfWidth: null, hours: 50 });
  });

  it("counts margin where both have a price, and a base without investment as there already", () => {
    const priced = plant("base", [100, 110], [50, 50], { price: 1 });
    const other = plant("other", [150, 160], [70, 70], { price: 1, investment: 600 });
    // By hand: margins of 50 and 60 before, 80 and 90 after.
    expect(paybacks([[priced, other]])[0]).toMatchObject({ rule: "margin", gain: 30, extraInvestment: 600, hours: 20 });
    // Price of one side alone: 0.50 and 0.4545 a part before, 0.4667 and 0.4375 after, on 100 and 110 parts.
    const { price: _, ...rates } = other.scenario.costs!;
    const unpriced = { ...other, scenario: { ...other.scenario, costs: rates } };
    const saved = 100 * (0.5 - 70 / 150) + 110 * (50 / 110 - 70 / 160);
    expect(paybacks([[priced, unpriced]])[0]?.gain).toBeCloseTo(saved / 2, 9);
  });

  it("holds for all pairs at once, of those whose costs are of one kind", () => {
    const other = plant("other", [200, 200], [80, 80.2], { investment: 10_000 });
    const foreign = plant("foreign", [200, 200], [80, 80.2], { investment: 10_000, currency: "USD" });
    const found = paybacks([
      [base, other],
      [base, other],
      [base, foreign],
    ]);
    expect(found).toHaveLength(2);
    // [C] t(0.9875, 1) = 25.4517.
    expect(found[0]!.halfWidth! / 0.05).toBeCloseTo(25.4517, 2);
  });
});

describe("the pairs of a comparison", () => {
  const studies = ["a", "b", "c"].map((name) => studyMade(name, [1]));
  const names = (against?: string) =>
    pairsAgainst(studies, against).map(([one, other]) => one.scenario.name + other.scenario.name);

  it("are against the first, the previous, all, or a name", () => {
    expect(names()).toEqual(["ab", "ac"]);
    expect(names("first")).toEqual(["ab", "ac"]);
    expect(names("previous")).toEqual(["ab", "bc"]);
    expect(names("all")).toEqual(["ab", "ac", "bc"]);
    expect(names("b")).toEqual(["ba", "bc"]);
    expect(names("d")).toEqual([]);
  });
});
