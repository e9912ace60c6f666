// The parts of a choice that need no run: the measure that decides, the worthwhile difference, and the prices of options.
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
  const known = criteria([first, first.filter(({ measure: name }) => name !== "good parts: bottle")]);

  it("is one that all layouts have in one unit", () => {
    expect([...known.keys()]).not.toContain("good parts: bottle");
    expect(criteria([first, [measure("cost per hour", "USD")]]).size).toBe(0);
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
    expect(criterionNamed(text, known)).toMatchObject({ measure: name, better });
  });

  it.each(["", "co", "parts", "right: cycle time"])("is not found as %j", (text) => {
    expect(criterionNamed(text, known)).toBeUndefined();
  });
});

describe("the worthwhile difference", () => {
  it.each([
    [{ by: "amount", value: 12 }, [1000, 1010], 12],
    // [C] 1 % of 1,164.8 to two digits.
    [{ by: "share", value: 0.01 }, [1164.3, 1165.3], 12],
    [{ by: "share", value: 0.01 }, [-50, -70], 0.6],
    [{ by: "share", value: 0.01 }, [0, 0], 1],
  ] as const)("%j of %j is %d", (given, values, difference) => {
    expect(worthwhileOf(given, values)).toBe(difference);
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
  });
});
