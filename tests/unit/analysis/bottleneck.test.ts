// Holds critical shares, utilization and elasticities to values calculated by hand or by reruns of the cell.
import { describe, expect, it } from "vitest";
import { elasticityMethod, finiteDifference, SCALE_FACTORS, sharesCrew } from "#analysis/bottleneck/elasticity.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import type { StepScale } from "#cell/layers/planCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

function studyOf(scenario: Scenario): Study {
  const outcome = runStudy(scenario);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

function rowOf({ bottleneck }: Study, resource: string, step: string) {
  const row = bottleneck.find((each) => each.resource === resource && each.step === step);
  if (!row) throw new Error(`${resource} has no step ${step}`);
  return row;
}

const whole = ["run.length=13050 s", "run.warmup=0 s"];
const varied = "stations.steps.cool={ triangular: [7 s, 8 s, 9 s] }";

describe("one station with fixed times", () => {
  // By hand [C]: 1000 whole cycles of 13.05 s = 0.25 + 1.8 + 11, of which cooling takes 8 s and the circuit of the screw 6.3 s.
  const study = studyOf(scenarioOf(cellText(1), ...whole));
  const { name } = study.scenario.stations[0] ?? { name: "" };

  it("has critical shares of its steps in proportion to their times", () => {
    expect(study.bottleneck[0]).toMatchObject({ rank: 1, resource: name, step: "cool" });
    expect(rowOf(study, name, "cool").criticalShare.mean).toBeCloseTo(8 / 13.05, 9);
    expect(rowOf(study, name, "drop").criticalShare.mean).toBeCloseTo(1.8 / 13.05, 9);
    expect(rowOf(study, "valve", "shift to port").criticalShare.mean).toBeCloseTo(0.25 / 13.05, 9);
    expect(rowOf(study, "plasticator", "recharge").criticalShare.mean).toBe(0);
  });

  it("is always active, and its screw is active except while it holds a full shot", () => {
    expect(rowOf(study, name, "cool").utilization).toBeCloseTo(1, 9);
    expect(rowOf(study, "plasticator", "recharge").utilization).toBeCloseTo(6.3 / 13.05, 9);
    expect(rowOf(study, "valve", "shift to port").utilization).toBeCloseTo(2.3 / 13.05, 9);
  });

  it("gives the screw the slack of the closed form: 13.05 − 6.3 s", () => {
    expect(rowOf(study, name, "cool").slackSeconds).toBe(0);
    expect(rowOf(study, "plasticator", "recharge").slackSeconds).toBeCloseTo(6.75, 9);
    expect(study.runnerUp).toEqual({ name: "plasticator", slackPerShot: expect.closeTo(6.75, 9) as number });
  });
});

describe("elasticity", () => {
  it("is minus the critical share for a fixed order, which reruns with a shorter and a longer step confirm", () => {
    // Screw and stations are nearly in balance, so a one-sided difference would measure the curvature as well.
    const balanced = [varied, "valve.dispatch=alternate", "delivery.recharge=2 s", "run.length=40 h"];
    const scenario = scenarioOf(cellText(3), ...balanced);
    const run = replicationRunner(scenario);
    const secondsPerPart = (scale: StepScale | null): number => {
      const { measures } = run({ replication: 1, scale });
      return 3600 / (measures.find(({ measure }) => measure === "good parts per hour")?.value ?? 0);
    };
    const study = studyOf({ ...scenario, run: { ...scenario.run, replications: 1 } });
    const steps = [...study.bottleneck.slice(0, 1), rowOf(study, "plasticator", "recharge")];
    for (const { resource, step, elasticity, elasticityMethod: method } of steps) {
      expect(method).toBe("critical path, exact for a fixed order");
      const [more, less] = [1.005, 0.995].map((factor) => secondsPerPart({ resource, step, factor }));
      const slope = -((more ?? 0) - (less ?? 0)) / 0.01 / secondsPerPart(null);
      expect(slope).toBeLessThan(-0.05);
      expect(Math.abs(slope - (elasticity?.mean ?? 0))).toBeLessThan(0.006);
    }
  });

  it("by finite difference is −1 for the only step of a cycle: 2 % more time gives 2 % fewer parts", () => {
    const answer = (value: number) => ({
      task: { replication: 1, scale: null },
      measures: [{ resource: "cell", measure: "good parts per hour", unit: "1/h", value }],
      resin: { bought: 0, surplus: 0 },
      stateShares: [],
      elementTimes: [],
      criticalShares: [],
      longestActive: [],
      cycles: [],
      parisons: [],
      standstill: null,
    });
    expect(SCALE_FACTORS).toEqual({ shorter: 0.99, longer: 1.01 });
    // Seconds per part are proportional to the step: 1000/0.99 and 1000/1.01 parts.
    expect(finiteDifference([answer(1000 / 0.99)], [answer(1000 / 1.01)])?.mean).toBeCloseTo(-1, 12);
    expect(finiteDifference([answer(1000), answer(2000)], [answer(1000), answer(2000)])?.mean).toBeCloseTo(0, 12);
    expect(finiteDifference([answer(0)], [answer(0)])).toBeNull();
  });

  it("is found by reruns for different stations, and only for steps with a large enough critical share", () => {
    const base = scenarioOf(cellText(2), varied);
    const stations = base.stations.map((each, k) => ({ ...each, open: { kind: "fixed", value: 1 + k } as const }));
    const study = studyOf({ ...base, stations });
    const known = study.bottleneck.filter(({ elasticity }) => elasticity !== null);
    expect(known.length).toBeGreaterThan(2);
    expect(known.length).toBeLessThanOrEqual(8);
    for (const row of known) {
      expect(row.elasticityMethod).toBe("paired finite difference");
      expect(row.criticalShare.mean).toBeGreaterThanOrEqual(0.01);
    }
    const unknown = study.bottleneck.filter(({ elasticity }) => elasticity === null);
    for (const row of unknown) expect(row.elasticityMethod).toBeNull();
  });

  it("has the method that the cell allows", () => {
    const two = scenarioOf(cellText(2));
    const [left, right] = two.stations;
    if (!left || !right) throw new Error("two stations are there");
    const byOperator = (operators: number): Scenario => ({
      ...two,
      operators,
      stations: two.stations.map((each) => ({ ...each, remove: { ...each.remove, by: "operator" } })),
    });
    const dispatch = (rule: Scenario["valve"]["dispatch"]): Scenario => ({
      ...two,
      valve: { ...two.valve, dispatch: rule },
    });
    const different = { ...two, stations: [left, { ...right, cavities: 1 }] };
    expect(elasticityMethod(two)).toBe("estimate");
    expect(elasticityMethod({ ...two, stations: [left] })).toBe("exact");
    expect(elasticityMethod(dispatch("alternate"))).toBe("exact");
    expect(elasticityMethod(dispatch("priority"))).toBe("difference");
    expect(elasticityMethod(dispatch("longest-since-drop"))).toBe("difference");
    expect(elasticityMethod(different)).toBe("difference");
    expect([sharesCrew(byOperator(1)), sharesCrew(byOperator(2))]).toEqual([true, false]);
    expect([elasticityMethod(byOperator(1)), elasticityMethod(byOperator(2))]).toEqual(["difference", "estimate"]);
  });
});

describe("the leading step", () => {
  it("combines equal stations and separates different ones", () => {
    const base = scenarioOf(cellText(2), varied);
    const names = base.stations.map(({ name }) => name);
    expect(studyOf(base).leading[0]).toMatchObject({ step: "cool", resources: names });
    const stations = base.stations.map((each, k) => ({ ...each, cavities: k + 1 }));
    expect(studyOf({ ...base, stations }).leading[0]?.resources).toHaveLength(1);
  });

  it("has the stations as runner-up when the screw sets the pace, with the slack of the closed form", () => {
    // Circuits max{ r + d + 2v, (v + d + m)/M } with M = 3, derived by hand [C]: 6.3 against 13.05/3, so the slack of a station is
    // (3 × 6.3 − 13.05) / 3 s a shot.
    const study = studyOf(scenarioOf(cellText(3)));
    expect(study.leading[0]).toMatchObject({ step: "recharge", resources: ["plasticator"] });
    expect(study.runnerUp).toEqual({
      name: "stations",
      slackPerShot: expect.closeTo((3 * 6.3 - 13.05) / 3, 9) as number,
    });
  });

  it("never has the valve or an absent crew as runner-up", () => {
    for (const set of [[], ["valve.shift=0 s"], ["delivery.rechargeStarts=mold-closed"]]) {
      const { runnerUp } = studyOf(scenarioOf(cellText(2), ...set));
      expect(["plasticator", "stations"]).toContain(runnerUp?.name);
    }
  });
});
