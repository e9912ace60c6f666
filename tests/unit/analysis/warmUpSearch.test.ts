// The search for the end of the warm-up: requested trial runs, the common cut of all replications, and the refusal.
import { describe, expect, it } from "vitest";
import {
  beginWarmUpSearch,
  pilotsWanted,
  runPilot,
  settleWarmUp,
  type PilotTask,
  type WarmUpSearch,
} from "#analysis/statistics/warmUpSearch.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const scenario: Scenario = scenarioOf(cellText(2), "run.warmup=auto", "run.replications=4", "run.length=2 h");

/** Trial runs whose seconds per shot follow a given rule. */
function searchOf(secondsPerShot: (shot: number) => number, shots: (task: PilotTask) => number): WarmUpSearch {
  let search = beginWarmUpSearch(scenario);
  for (let tasks = pilotsWanted(search); tasks.length > 0; tasks = pilotsWanted(search)) {
    const answers = tasks.map((task) => ({
      task,
      secondsPerShot: Array.from({ length: shots(task) }, (_, shot) => secondsPerShot(shot)),
    }));
    search = { ...search, answers: [...search.answers, ...answers] };
  }
  return search;
}

describe("the search for the end of the warm-up", () => {
  it("requests no runs when the warm-up is a time, and does not change the scenario", () => {
    const fixed = { ...scenario, run: { ...scenario.run, warmup: 60 } };
    expect(pilotsWanted(beginWarmUpSearch(fixed))).toEqual([]);
    expect(settleWarmUp(beginWarmUpSearch(fixed))).toEqual({ scenario: fixed, warnings: [] });
  });

  // MSER-5 of White, An effective truncation heuristic for bias reduction in simulation output, Simulation 69 (1997) 323 [M],
  // cuts 6 batches of y_i = 10 − 8e^(−i/10) + sin i, i = 1..200, computed independently [C].
  it("cuts the batches of MSER-5 from all replications, rounded up to a whole second", () => {
    const rule = (shot: number): number => 10 - 8 * Math.exp(-(shot + 1) / 10) + Math.sin(shot + 1);
    const { scenario: settled, warnings } = settleWarmUp(searchOf(rule, () => 200));
    const cut = Array.from({ length: 30 }, (_, shot) => rule(shot)).reduce((sum, each) => sum + each, 0);
    expect(settled.run.warmup).toBe(Math.ceil(cut));
    expect(settled.run.length).toBe(scenario.run.length);
    expect(warnings).toEqual([]);
  });

  it("doubles the run once when no end is found, and then cuts nothing and warns", () => {
    const search = searchOf(
      (shot) => shot,
      () => 400,
    );
    expect(new Set(search.answers.map(({ task }) => task.length))).toEqual(new Set([7200, 14_400]));
    const { scenario: settled, warnings } = settleWarmUp(search);
    expect(settled.run).toMatchObject({ warmup: 0, length: 14_400 });
    expect(warnings.map(({ code, severity }) => ({ code, severity }))).toEqual([
      { code: "warmup-not-found", severity: "warning" },
    ]);
  });

  it("keeps the doubled run when it shows the end", () => {
    const shots = ({ length }: PilotTask): number => (length > 7200 ? 400 : 45);
    const rule = (shot: number): number => (shot < 100 ? 20 - shot / 10 : 10 + (shot % 2));
    const { scenario: settled, warnings } = settleWarmUp(searchOf(rule, shots));
    expect(settled.run.length).toBe(14_400);
    expect(settled.run.warmup).toBeGreaterThan(900);
    expect(warnings).toEqual([]);
  });

  it("cuts only the transient of a cell whose times are all fixed", () => {
    let search = beginWarmUpSearch(scenario);
    for (let tasks = pilotsWanted(search); tasks.length > 0; tasks = pilotsWanted(search)) {
      search = { ...search, answers: [...search.answers, ...tasks.map((task) => runPilot(scenario, task))] };
    }
    const { run } = settleWarmUp(search).scenario;
    expect(run.warmup).toBeLessThan(10 * 13.05);
    expect(run.length).toBe(scenario.run.length);
  });

  // Three mean repairs of 4 min are 720 s, a tenth of 2 h as well; three of 2 min are half of that.
  it.each([
    ["4 min", 720],
    ["2 min", 360],
    ["20 min", 720],
  ])("lasts at least three mean repairs of %s, at most a tenth of the run", (repair, least) => {
    const stop = `stops: [{ name: jam, resource: plasticator, between: 2 h, repair: ${repair}, by: itself, step: finish }]`;
    const stopped = scenarioOf(cellText(2, stop), "run.warmup=auto", "run.replications=2", "run.length=2 h");
    const constant = { scenario: stopped, answers: constantAnswers(stopped) };
    expect(settleWarmUp(constant).scenario.run.warmup).toBe(least);
  });

  it("ends when good parts come out as steadily as shots", () => {
    const late = pilotsWanted(beginWarmUpSearch(scenario)).map((task) => ({
      task,
      secondsPerShot: Array.from({ length: 400 }, () => 6),
      // The belt fills for 30 parts of 10 s, then every part takes 3 s.
      secondsPerPart: Array.from({ length: 800 }, (_, part) => (part < 30 ? 10 : 3)),
    }));
    expect(settleWarmUp({ scenario, answers: late }).scenario.run.warmup).toBe(300);
  });

  it("reads good parts out of a cell with a takeaway, at their own times", () => {
    const text = cellText(2, "takeaway: { belt: { time: 60 s, places: 40 } }");
    const packed = scenarioOf(text, "run.warmup=auto", "run.length=2 h");
    const { secondsPerShot, secondsPerPart = [] } = runPilot(packed, { replication: 1, length: 3600 });
    expect(secondsPerPart[0]).toBeGreaterThan(60);
    const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
    expect(sum(secondsPerPart)).toBeLessThanOrEqual(3600);
    expect(secondsPerPart.length / 2 / secondsPerShot.length).toBeCloseTo(1, 1);
  });
});

function constantAnswers(of: Scenario): WarmUpSearch["answers"] {
  return pilotsWanted(beginWarmUpSearch(of)).map((task) => ({
    task,
    secondsPerShot: Array.from({ length: 400 }, () => 6),
  }));
}
