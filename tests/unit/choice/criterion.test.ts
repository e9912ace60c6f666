// The measure that decides a choice, the worthwhile difference, and the prices of options.
import { describe, expect, it } from "vitest";
import { criteria, criterionNamed } from "#analysis/choice/criterion.ts";
import { layoutOf } from "#analysis/choice/layout.ts";
import { worthwhileOf } from "#analysis/choice/worthwhile.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const measure = (name: string, unit: string, resource = "cell") => ({ resource, measure: name, unit, value: 1 });

describe("the measure that decides", () => {
  const first = [
    measure("good parts per hour", "1/h"),
    measure("good parts: bottle", "1/h"),
    measure("seconds per shot", "s"),
    measure("reject share", "share"),
    measure("cost per hour", "EUR"),
    measure("cost per 1,000 good parts", "EUR"),
    measure("cycle time", "s", "left"),
  ];
  const known = () => criteria([first, first.filter(({ measure: name }) => name !== "good parts: bottle")]);

  it("is one that all layouts have in one unit", () => {
    expect([...known().keys()]).not.toContain("good parts: bottle");
    expect(criteria([first, [measure("cost per hour", "USD")]]).size).toBe(0);
    expect(criteria([first, first, [measure("reject share", "share")]]).size).toBe(1);
  });

  it.each([
    ["good parts per hour", "good parts per hour", "more"],
    ["Seconds per shot", "seconds per shot", "less"],
    ["reject", "reject share", "less"],
    ["cost per 1,000", "cost per 1,000 good parts", "less"],
    ["cost per 1000 good parts", "cost per 1,000 good parts", "less"],
    ["cost per hour", "cost per hour", "less"],
    ["cost", "cost per 1,000 good parts", "less"],
    ["left: cycle time", "cycle time", "less"],
  ])("%s is %s, and %s is better", (text, name, better) => {
    expect(criterionNamed(text, known())).toMatchObject({ measure: name, better });
  });

  it("is none without a name, even where there is but one", () => {
    expect(criterionNamed("", criteria([[measure("reject share", "share")]]))).toBeUndefined();
  });

  it.each(["", "co", "parts", "right: cycle time"])("is not found as %j", (text) => {
    expect(criterionNamed(text, known())).toBeUndefined();
  });
});

describe("the worthwhile difference", () => {
  it.each([
    [{ by: "amount", value: 12 }, [[1000, 1010]], 12],
    // [C] 1 % of 1,164.8 to two digits.
    [{ by: "share", value: 0.01 }, [[1164.3, 1165.3], [9]], 12],
    [{ by: "share", value: 0.01 }, [[-50, -70]], 0.6],
    [{ by: "share", value: 0.01 }, [[0, 0], [40]], 0.4],
    [{ by: "share", value: 0.01 }, [[0, 0]], 0.01],
  ] as const)("%j of %j is %d", (given, values, difference) => {
    expect(worthwhileOf(given, values).difference).toBe(difference);
  });

  it("is a share of the first layout that has any", () => {
    const share = { by: "share", value: 0.1 } as const;
    expect(worthwhileOf(share, [[], [8]])).toEqual({ difference: 0.8, base: 1 });
    expect(worthwhileOf(share, [[0], [0]]).base).toBe(0);
    expect(worthwhileOf({ by: "share", value: 0.1 }, [[0], [0], [8], [9]]).base).toBe(2);
  });
});

describe("a layout", () => {
  const text = cellText(
    1,
    `costs: { currency: EUR, machine: 36 per h, investment: 1000 }
options:
  - { name: a, group: g, settings: { stations.count: 2 }, investment: 300, perHour: 3.6 per h }
  - { name: b, group: h, settings: { stations.cavities: 3 }, investment: 40 }
`,
  );
  const scenario = scenarioOf(text);
  const [a, b] = scenario.options!;

  it("has the prices of its options on top of those of the cell", () => {
    const { scenario: priced, floorSpace } = layoutOf(scenario, [a!, b!]);
    expect(priced.costs?.investment).toBe(1340);
    // [C] (36 + 3.6) / 3600 per s.
    expect(priced.costs?.machine).toBeCloseTo(0.011, 12);
    expect(floorSpace).toBeNull();
    expect("options" in priced).toBe(false);
  });

  it("keeps its own prices without options", () => {
    expect(layoutOf(scenario, []).scenario.costs).toEqual(scenario.costs);
    const { investment: _, ...rates } = scenario.costs!;
    const [bought] = [{ name: "c", group: "g", settings: {}, investment: 5 }] as never as typeof scenario.options &
      object;
    const bare = { ...scenario, costs: rates };
    expect(layoutOf(bare, [a!]).scenario.costs?.investment).toBe(300);
    expect(layoutOf({ ...bare, options: [bought!] }, [bought!]).scenario.costs).toEqual({ ...rates, investment: 5 });
    expect("investment" in layoutOf({ ...bare, options: [] }, []).scenario.costs!).toBe(false);
    const { costs: __, ...free } = scenario;
    expect("costs" in layoutOf(free, [a!]).scenario).toBe(false);
  });
});
