// The options of a scenario: how they are read and checked, and the layouts that they make.
import { describe, expect, it } from "vitest";
import { optionSetCount, optionSets } from "#scenario/optionSets.ts";
import { readScenario, type ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { cellText } from "../../support/cellScenario.ts";

const costs = "costs: { currency: EUR }";

function read(options: string, more = costs): ScenarioReading {
  return readScenario(cellText(1, `${more}\noptions: ${options}\n`), { name: "cell", file: "cell.yaml" });
}

describe("the options of a scenario", () => {
  it("are read with their settings as `--set` takes them, and their prices in SI", () => {
    const { scenario } = read(
      "[{ name: two, group: stations, settings: { stations.count: 2, stations.*.steps.cool: -1 s, stops: null }, investment: 9, perHour: 36 per h, floorSpace: 500 cm² }]",
    );
    expect(scenario?.options).toEqual([
      {
        name: "two",
        group: "stations",
        settings: ["stations.count=2", "stations.*.steps.cool=-1 s", "stops=null"],
        investment: 9,
        perHour: 0.01,
        floorSpace: 0.05,
      },
    ]);
  });

  it("leave the cell as it is", () => {
    const { options: _, ...cell } = read("[{ name: two, settings: { stations.count: 2 } }]").scenario!;
    const { scenario } = readScenario(cellText(1, costs), { name: "cell", file: "cell.yaml" });
    expect(cell).toEqual(scenario);
  });

  it.each([
    ["[{ name: a, settings: { x: 1 } }, { name: a, settings: { y: 1 } }]", "option-twice", "options[1].name"],
    [
      "[{ name: a, group: g, settings: { x: 1 } }, { name: b, group: h, settings: { x: 2 } }]",
      "option-path",
      "options[1].settings",
    ],
    ["[{ name: a, settings: {} }]", "value-missing", "options[0].settings"],
    ["[{ name: a, settings: [x] }]", "wrong-type", "options[0].settings"],
    ["[{ name: a }]", "missing", "options[0].settings"],
    ["[{ name: a, settings: { x: 1 }, investment: -5 }]", "out-of-range", "options[0].investment"],
    ["[]", "list-empty", "options"],
  ])("%s is refused: %s", (options, code, path) => {
    const { scenario, issues } = read(options);
    expect(scenario).toBeUndefined();
    expect(issues.filter(({ severity }) => severity === "error")).toMatchObject([{ code, path }]);
  });

  it("with a price need a currency", () => {
    const { issues } = read("[{ name: a, settings: { x: 1 }, perHour: 5 per h }]", "");
    expect(issues).toMatchObject([{ code: "option-currency", path: "options[0].perHour" }]);
  });
});

describe("the layouts", () => {
  const option = (name: string, group?: string) => ({ name, settings: [], ...(group === undefined ? {} : { group }) });
  const named = (...options: readonly ReturnType<typeof option>[]) =>
    optionSets(options).map((set) => set.map(({ name }) => name).join("+"));

  it("are the file, each option, and at most one option of each group together", () => {
    expect(named()).toEqual([""]);
    expect(named(option("a"), option("b"))).toEqual(["", "a", "b"]);
    // [C] (2 + 1) × (1 + 1) combinations of two groups, and the option without a group.
    const sets = named(option("a", "g"), option("b", "g"), option("c", "h"), option("d"));
    expect(new Set(sets)).toEqual(new Set(["", "a", "b", "c", "a+c", "b+c", "d"]));
    expect(sets).toHaveLength(7);
  });

  it("are counted without being made", () => {
    const options = ["g", "g", "h", undefined].map((group, i) => option(`o${i}`, group));
    expect(optionSetCount(options)).toBe(optionSets(options).length);
    expect(optionSetCount(Array.from({ length: 60 }, (_, i) => option(`o${i}`, `g${i}`)))).toBe(2 ** 60);
  });
});
