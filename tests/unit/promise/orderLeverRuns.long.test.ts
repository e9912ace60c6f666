// The runs of the levers of an order: each repeats by its settings, and the numbers are those of the changed cell.
import { describe, expect, it } from "vitest";
import { runLevers } from "#analysis/promise/orderLeverRuns.ts";
import type { OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import { orderLevers } from "#analysis/promise/orderLevers.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { runStudy } from "#analysis/study/study.ts";
import { leverLines } from "#report/answers/leverLines.ts";
import { promiseLeversTables } from "#report/tables/asked/promiseLeversTable.ts";
import { firstCases } from "../../support/caseCount.ts";
import { cellText } from "../../support/cellScenario.ts";
import { morning, orderStudyOf, varied } from "../../support/orderOf.ts";
import { shippedText } from "../../support/reported.ts";

const study = orderStudyOf(morning);
const found = runLevers(study, orderLevers(morning, study.order));

describe("the levers of an order of two colors", () => {
  it("repeat digit for digit by their settings and their number of runs", () => {
    expect(found.rows.length).toBeGreaterThan(3);
    for (const { settings, due } of firstCases(found.rows, 1)) {
      expect(orderStudyOf(morning, settings, due.replications).due).toEqual(due);
    }
  });

  it("have few runs where they are far from enough, and more where they are not", () => {
    const runs = new Map(found.rows.map(({ name, due }) => [name, due]));
    expect(study.due?.verdict).toBe("no");
    expect(runs.get("blue bottle after the due date")).toMatchObject({ replications: 80, onTime: 80, verdict: "yes" });
    expect(runs.get("one operator more")).toMatchObject({ replications: 20, verdict: "no" });
  });

  it("are sorted by the difference of cost, in pairs of runs with the same random numbers", () => {
    const costs = found.rows.map(({ cost }) => cost?.mean ?? 0);
    expect({ by: found.by, currency: found.currency }).toEqual({ by: "cost of the order", currency: "EUR" });
    expect(costs).toEqual(costs.toSorted((one, other) => one - other));
    const { settings, cost, due } = found.rows.find(({ name }) => name === "one operator more")!;
    const valuesOf = ({ uses }: OrderStudy) => uses.find(({ quantity }) => quantity === "cost")!.values;
    const [before, after] = [valuesOf(study), valuesOf(orderStudyOf(morning, settings, due.replications))];
    const differences = after.map((value, i) => value - before[i]!);
    expect(cost?.mean).toBeCloseTo(differences.reduce((sum, each) => sum + each, 0) / differences.length, 9);
    expect(cost?.count).toBe(20);
  });

  it("have no cost difference where fewer parts are made", () => {
    expect(found.rows.find(({ effort }) => effort === "later")?.cost).toBeNull();
  });

  it("stand in promise-levers.csv with the gain over the order as it is", () => {
    const [table] = promiseLeversTables(study, found);
    const at = (name: string) => table!.columns.findIndex((column) => column.name === name);
    for (const row of table!.rows) {
      const [chance, before, gained] = ["chance_by_due", "chance_without", "chance_gained"].map(
        (name) => row[at(name)],
      );
      expect(gained).toBeCloseTo(Number(chance) - Number(before), 12);
    }
    expect(promiseLeversTables(study, null)).toEqual([]);
  });
});

describe("a lever that shortens a step", () => {
  // A cell with a fixed order is a max-plus linear system, and such a system is monotone in its times: no run ends later.
  // Baccelli, Cohen, Olsder, Quadrat, Synchronization and Linearity, 1992, theorem 2.67 and section 8.2 [M].
  it("makes no run later, with the same random numbers", () => {
    const vary = varied(
      shippedText("two-station"),
      "orders=[{ quantity: 3000 parts, due: 2.5 h }]",
      "valve.dispatch=alternate",
      "stations.*.steps.cool=9 s",
    );
    const before = orderStudyOf(vary, [], 20).finish;
    const levers = orderLevers(vary, orderStudyOf(vary, [], 20).order);
    const cooling = levers.find(({ name }) => name === "cooling −5 %")!;
    const after = orderStudyOf(vary, cooling.settings, 20).finish;
    expect(after.filter((seconds, i) => seconds > before[i]!)).toEqual([]);
    expect(after.filter((seconds, i) => seconds < before[i]!)).toHaveLength(20);
  });
});

describe("the parts that lack", () => {
  it("are the order less what a run up to the due date makes", () => {
    const vary = varied(cellText(1), "orders=[{ quantity: 100000 parts, due: 3 h }]");
    const base = orderStudyOf(vary, [], 4);
    const { missing } = runLevers(base, []);
    const until = vary(["run.length=3 h", "run.warmup=0 s", "run.replications=4"])!;
    const outcome = runStudy(until);
    const good =
      outcome.kind === "stuck"
        ? undefined
        : outcome.study.measures.find(({ measure }) => measure === "good parts per hour");
    expect(missing).toBe(100_000 - Math.min(...good!.values.map((value) => Math.round((value ?? 0) * 3))));
  });
});

describe("the lines of the levers", () => {
  const changed = (change: Partial<OrderLevers["rows"][number]["due"]>, missing: number | null): OrderLevers => ({
    ...found,
    rows: found.rows.slice(0, 2).map((row) => ({ ...row, missing, due: { ...row.due, ...change } })),
  });
  const textOf = (levers: OrderLevers) => leverLines(study, levers, 80).join("\n");

  it("name a call for one that fits, and mark it", () => {
    const text = textOf(found);
    expect(text).toMatch(/^blue bottle after the due date +100 % .* fits, all runs$/mu);
    expect(text).toMatch(/Add --set "[^"]+" --replications 80 to repeat "/u);
  });

  it("say how many parts lack where none fits", () => {
    const text = textOf(changed({ verdict: "no", share: 0.2 }, 1234)).replaceAll(/\s+/gu, " ");
    expect(text).toContain("No single change reaches 95 %. With ");
    expect(text).toContain("1,234 good parts lack at the due date");
  });

  it("name the call that decides where one is open", () => {
    const text = textOf(changed({ verdict: "undecided", replications: 80 }, 0)).replaceAll(/\s+/gu, " ");
    expect(text).toContain("may fit");
    expect(text).toContain("--replications 320");
  });

  it("take at most 80 columns", () => {
    const wide = [found, changed({ verdict: "no" }, 5)].flatMap((levers) => leverLines(study, levers, 80));
    expect(wide.filter((line) => line.length > 80)).toEqual([]);
  });

  it("say so where no change is known", () => {
    expect(textOf({ ...found, rows: [] })).toContain("No change of the scenario");
  });
});
