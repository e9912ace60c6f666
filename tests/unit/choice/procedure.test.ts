// The procedure of a choice, from runs of its layouts.
import { describe, expect, it } from "vitest";
import { beginChoice, tasksOf } from "#analysis/choice/choice.ts";
import { concludeChoice } from "#analysis/choice/concludeChoice.ts";
import { layoutOf } from "#analysis/choice/layout.ts";
import { choiceWanted } from "#analysis/choice/wantedRuns.ts";
import { doWork } from "#analysis/replication/work.ts";
import { chosen, goodParts, usualGoal } from "../../support/chosen.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

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
