// Holds a study to its order of replications, and its answers to closed forms and to queueing theory.
import { describe, expect, it } from "vitest";
import { CELL } from "#analysis/replication/measures.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { beginStudy, concludeStudy, nextWanted, runStudy, withAnswers, type Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

function studyOf(scenario: Scenario): Study {
  const outcome = runStudy(scenario);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

function intervalOf(study: Study, resource: string, measure: string) {
  const found = measureOf(study.measures, resource, measure);
  if (!found) throw new Error(`${resource} has no ${measure}`);
  return found.interval;
}

const varied = "stations.steps.cool={ triangular: [7 s, 8 s, 9 s] }";

describe("the procedure of a study", () => {
  const scenario = scenarioOf(cellText(2), varied);

  it("requests every unscaled replication, numbered from 1, and then nothing", () => {
    const begun = beginStudy(scenario);
    expect(nextWanted(begun)).toEqual([1, 2, 3].map((replication) => ({ replication, scale: null })));
    const run = replicationRunner(scenario);
    const made = withAnswers(begun, nextWanted(begun).map(run));
    expect(nextWanted(made)).toEqual([]);
  });

  it("requests only the missing replications", () => {
    const answer = replicationRunner(scenario)({ replication: 2, scale: null });
    expect(nextWanted(withAnswers(beginStudy(scenario), [answer])).map(({ replication }) => replication)).toEqual([
      1, 3,
    ]);
  });

  it("gives the same study for any order of the answers", () => {
    const run = replicationRunner(scenario);
    const answers = nextWanted(beginStudy(scenario)).map(run);
    const forward = concludeStudy(withAnswers(beginStudy(scenario), answers));
    const backward = concludeStudy(withAnswers(beginStudy(scenario), answers.toReversed()));
    expect(JSON.stringify(backward)).toBe(JSON.stringify(forward));
    expect(JSON.stringify(runStudy(scenario))).toBe(JSON.stringify(forward));
  });

  it("requests all reruns with shorter and longer steps for different stations, where full sensitivities are asked for", () => {
    const different = { ...scenario, stations: scenario.stations.map((each, k) => ({ ...each, cavities: k + 1 })) };
    const run = replicationRunner(different);
    const begun = beginStudy(different, "full");
    const made = withAnswers(begun, nextWanted(begun).map(run));
    const wanted = nextWanted(made);
    const steps = new Set(wanted.map(({ scale }) => `${JSON.stringify(scale?.steps)} ${scale?.factor}`));
    expect(steps.size).toBeGreaterThan(0);
    expect(steps.size).toBeLessThanOrEqual(2 * 5);
    for (const step of steps) expect(step).toMatch(/ (0\.98|1\.02)$/);
    expect(wanted).toHaveLength(3 * steps.size);
    expect(nextWanted(withAnswers(made, wanted.map(run)))).toEqual([]);
  });

  it("ends at a deadlock, and reports what each process waits for", () => {
    const answer = replicationRunner(scenario)({ replication: 2, scale: null });
    const waiting = [{ process: "left", step: "remove", lacks: "operators" }];
    const stuck = { ...answer, standstill: { kind: "deadlock", seconds: 12.5, waiting } };
    const state = withAnswers(beginStudy(scenario), [stuck]);
    expect(nextWanted(state)).toEqual([]);
    const outcome = concludeStudy(state);
    expect(outcome).toMatchObject({ kind: "stuck", issue: { code: "deadlock", fate: "cell", severity: "error" } });
    if (outcome.kind === "stuck") {
      expect(outcome.issue.message).toContain("after 12.5 s of replication 2");
      expect(outcome.issue.message).toContain("left cannot remove, because it lacks: operators");
    }
  });

  it("ends when no step takes any time", () => {
    const none = { kind: "fixed", value: 0 } as const;
    const timeless = { drop: { by: "time", time: none }, recharge: { by: "time", time: none } } as const;
    const steps = {
      close: none,
      blow: none,
      cool: none,
      vent: none,
      open: none,
      remove: { time: none, by: "machine" },
    } as const;
    const stations = scenario.stations.map((station) => ({ ...station, ...timeless, ...steps }));
    const outcome = runStudy({ ...scenario, stations, valve: { ...scenario.valve, shift: none } });
    expect(outcome).toMatchObject({ kind: "stuck", issue: { code: "zero-time-loop", fate: "cell" } });
  });
});

describe("the answers of a study", () => {
  // The cell as a timed event graph with fixed times, computed independently of this project [C].
  it.each([
    [1, 13.05],
    [2, 6.525],
    [3, 6.3],
    [4, 6.3],
  ])("give %i stations with fixed times %d s a shot, the closed form", (count, period) => {
    const study = studyOf(scenarioOf(cellText(count)));
    const cycle = intervalOf(study, study.scenario.stations[0]?.name ?? "", "cycle time");
    expect(cycle.mean).toBeCloseTo(period * count, 9);
    expect(cycle.halfWidth).toBeCloseTo(0, 9);
    expect(study.ideal.secondsPerShot).toBeCloseTo(period, 9);
    expect(intervalOf(study, CELL, "seconds per shot").mean).toBeCloseTo(period, 1);
  });

  // The cell as a finite-source queue, computed independently of this project [C]: exponential mold phase, instant recharge.
  it.each([
    [1, "{ exponential: 1.8 s }", 281.25],
    [2, "{ exponential: 1.8 s }", 551.59],
    [2, "1.8 s", 556.43],
  ])("give %i stations with drops of %s the %d shots an hour of a finite-source queue", (count, drop, shotsPerHour) => {
    const none = ["close", "blow", "vent", "open"].map((step) => `stations.steps.${step}=0 s`);
    const queue = ["stations.steps.remove.time=0 s", "stations.steps.cool={ exponential: 11 s }", "valve.shift=0 s"];
    const screw = ["delivery.recharge=0 s", `delivery.drop=${drop}`, "run.length=40 h", "run.replications=20"];
    const study = studyOf(scenarioOf(cellText(count), ...none, ...queue, ...screw));
    const { mean, halfWidth } = intervalOf(study, CELL, "shots per hour");
    expect(Math.abs(mean - shotsPerHour)).toBeLessThan(1.5 * (halfWidth ?? 0));
    expect(halfWidth).toBeLessThan(0.01 * shotsPerHour);
  });

  it("give no half-width with one replication", () => {
    const study = studyOf(scenarioOf(cellText(2), varied, "run.replications=1"));
    for (const { interval } of study.measures) expect(interval.halfWidth).toBeNull();
    for (const { share } of study.states) expect(share.halfWidth).toBeNull();
  });

  it("add up: stations to the cell, states and critical shares to 1", () => {
    const study = studyOf(scenarioOf(cellText(3), varied));
    const names = study.scenario.stations.map(({ name }) => name);
    for (const measure of ["good parts per hour", "melt per hour", "shots per hour"]) {
      const sum = names.reduce((total, name) => total + intervalOf(study, name, measure).mean, 0);
      expect(intervalOf(study, CELL, measure).mean).toBeCloseTo(sum, 9);
    }
    for (const resource of new Set(study.states.map((state) => state.resource))) {
      const own = study.states.filter((state) => state.resource === resource);
      expect(own.reduce((sum, { share }) => sum + share.mean, 0)).toBeCloseTo(1, 9);
    }
    const steps = study.bottleneck.flatMap((resource) => resource.steps);
    for (const rows of [study.bottleneck, steps])
      expect(rows.reduce((sum, { share }) => sum + share.mean, 0)).toBeCloseTo(1, 9);
  });

  it("give a cause for every waiting state, and for no other state", () => {
    const study = studyOf(scenarioOf(cellText(2), varied));
    for (const { state, kind, cause } of study.states) expect(cause !== null, state).toBe(kind === "waiting");
  });

  it("leave out measures without data: no shot, no seconds per shot", () => {
    const study = studyOf(scenarioOf(cellText(1), "run.warmup=0 s", "run.length=1 s"));
    expect(measureOf(study.measures, CELL, "seconds per shot")).toBeUndefined();
    expect(intervalOf(study, CELL, "good parts per hour").mean).toBe(0);
  });
});
