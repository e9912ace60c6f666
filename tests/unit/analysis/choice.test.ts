// The measure that decides a choice, the worthwhile difference, the prices of options, and the procedure.
import { describe, expect, it } from "vitest";
import { beginChoice, tasksOf } from "#analysis/choice/choice.ts";
import { concludeChoice } from "#analysis/choice/concludeChoice.ts";
import { criteria, criterionNamed } from "#analysis/choice/criterion.ts";
import { layoutOf } from "#analysis/choice/layout.ts";
import { choiceWanted } from "#analysis/choice/wantedRuns.ts";
import { worthwhileOf } from "#analysis/choice/worthwhile.ts";
import { doWork } from "#analysis/replication/work.ts";
import { chosen, goodParts, usualGoal } from "../../support/chosen.ts";
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
  });
});

describe("the procedure", () => {
  const cell = (name: string, stations: number, ...set: readonly string[]) => {
    const text = cellText(stations, "costs: { currency: EUR, machine: 30 per h, station: 10 per h }");
    const times = "stations.steps.remove.time={ gamma: [0.8 s, 0.3 s] }";
    return { ...scenarioOf(text, times, "run.warmup=0 s", ...set), name };
  };
  const namesOf = ({ ranking }: ReturnType<typeof chosen>) => ranking.map(({ layout }) => layout.scenario.name);

  it("gives the same result for any number of runs a step", () => {
    const layouts = [cell("a", 2), cell("b", 2, "stations.steps.remove.time={ gamma: [0.8 s, 0.31 s] }"), cell("c", 1)];
    const goal = { ...usualGoal, worthwhile: { by: "amount", value: 0.1 } } as const;
    const [whole, single] = [chosen(layouts, goal), chosen(layouts, goal, 1)];
    const brief = (choice: typeof whole) =>
      choice.ranking.map(({ layout, verdict, dropped }) => [layout.scenario.name, verdict, dropped]);
    expect(whole.verdict).toBe("chosen");
    expect(whole.spent!.used).toBeGreaterThan(60);
    expect(brief(single)).toEqual(brief(whole));
    expect(single.spent).toEqual(whole.spent);
  });

  it("finds the cheapest layout that meets a need, and the next simpler one that does", () => {
    // [C] In 4 h one station makes 2 × 14,400 / 13.05 = 2,207 parts, two make 4,413, three and more 4,571 as the screw allows.
    const layouts = [1, 2, 3, 4].map((count) => cell(`${count}`, count, "run.length=4 h"));
    const need = { parts: 4000, within: 4 * 3600, chance: 0.95 };
    const byCost = {
      ...usualGoal,
      need,
      criterion: { ...goodParts, measure: "cost per hour", unit: "EUR", better: "less" },
    } as const;
    const cheapest = chosen(layouts, byCost);
    expect(namesOf(cheapest)).toEqual(["2", "3", "4", "1"]);
    expect(cheapest.ranking.at(-1)?.verdict).toBe("cannot meet the need");
    expect(cheapest.simpler).toBeNull();
    const most = chosen(layouts, { ...usualGoal, need });
    expect(most.simpler?.ranked.need?.kind).toBe("kept");
    expect(most.simpler?.ranked.layout.scenario.stations.length).toBeLessThan(
      most.ranking[0]!.layout.scenario.stations.length,
    );
  });

  it("leaves out a layout that comes to a standstill", () => {
    const layouts = [cell("a", 1), cell("stuck", 2)].map((scenario) => layoutOf(scenario, []));
    const [answer, other] = layouts.flatMap(({ scenario }) =>
      doWork({ kind: "replications", scenario, tasks: tasksOf(0, 1) }),
    );
    const waiting = [{ process: "station 1", step: "remove", lacks: "operator 1" }];
    const stuck = { ...other!, standstill: { kind: "deadlock", seconds: 12.5, waiting } };
    const state = beginChoice(layouts, [answer!, stuck], usualGoal);
    expect(choiceWanted(state).map(({ index, tasks }) => [index, tasks.length])).toEqual([[0, 19]]);
    const { ranking } = concludeChoice(state);
    expect(ranking[1]).toMatchObject({ verdict: "left out", value: null, replications: 0 });
    expect(ranking[1]?.leftOut).toContain("stuck has a deadlock after 12.5 s of replication 1");
  });

  it("says that nothing can be chosen where no layout meets the need", () => {
    const need = { parts: 5000, within: 4 * 3600, chance: 0.9 };
    const { verdict, replications, ranking, simpler } = chosen(
      [cell("1", 1, "run.length=4 h"), cell("2", 2, "run.length=4 h")],
      { ...usualGoal, need },
    );
    expect([verdict, simpler]).toEqual(["none", null]);
    expect(replications).toBeLessThan(20);
    expect(replications).toBe(ranking.reduce((sum, each) => sum + each.replications, 0));
    expect(replications).toBeGreaterThanOrEqual(2);
  });
});
