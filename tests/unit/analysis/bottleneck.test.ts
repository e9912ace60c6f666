// Holds shares, utilization and elasticities to what can be worked out by hand or by running the cell anew.
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
  // By hand: 1000 whole cycles of 13.05 s = 0.25 + 1.8 + 11, of which cooling takes 8 s; the screw needs 6.3 s of each.
  const study = studyOf(scenarioOf(cellText(1), ...whole));
  const { name } = study.scenario.stations[0] ?? { name: "" };

  it("is bound by its own steps in the proportion of their times", () => {
    expect(study.bottleneck[0]).toMatchObject({ rank: 1, resource: name, step: "cool" });
    expect(rowOf(study, name, "cool").criticalShare.mean).toBeCloseTo(8 / 13.05, 9);
    expect(rowOf(study, name, "drop").criticalShare.mean).toBeCloseTo(1.8 / 13.05, 9);
    expect(rowOf(study, "valve", "shift to port").criticalShare.mean).toBeCloseTo(0.25 / 13.05, 9);
    expect(rowOf(study, "plasticator", "recharge").criticalShare.mean).toBe(0);
  });

  it("is active all the time, and its screw but for holding the full shot", () => {
    expect(rowOf(study, name, "cool").utilization).toBeCloseTo(1, 9);
    expect(rowOf(study, "plasticator", "recharge").utilization).toBeCloseTo(6.3 / 13.05, 9);
    expect(rowOf(study, "valve", "shift to port").utilization).toBeCloseTo(2.3 / 13.05, 9);
  });

  it("leaves the screw the slack of the closed form: 13.05 − 6.3 s", () => {
    expect(rowOf(study, name, "cool").slackSeconds).toBe(0);
    expect(rowOf(study, "plasticator", "recharge").slackSeconds).toBeCloseTo(6.75, 9);
    expect(study.runnerUp).toEqual({ name: "plasticator", slackSeconds: expect.closeTo(6.75, 9) as number });
  });
});

describe("elasticity", () => {
  it("is minus the critical share where the order is fixed, as running the cell a little faster and slower confirms", () => {
    // Screw and stations are nearly in balance here, so that a one-sided difference would see the bend, not the slope.
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

  it("by finite difference is −1 for the whole of a cycle: its only step 2 % longer makes 2 % fewer parts", () => {
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
    // Seconds a part in proportion to the step: 1/0.99 and 1/1.01 of 1000 parts.
    expect(finiteDifference([answer(1000 / 0.99)], [answer(1000 / 1.01)])?.mean).toBeCloseTo(-1, 12);
    expect(finiteDifference([answer(1000), answer(2000)], [answer(1000), answer(2000)])?.mean).toBeCloseTo(0, 12);
    expect(finiteDifference([answer(0)], [answer(0)])).toBeNull();
  });

  it("is found by running anew where stations differ, and only for steps that matter", () => {
    const base = scenarioOf(cellText(2), varied);
    const stations = base.stations.map((each, k) => ({ ...each, open: { kind: "fixed", value: 1 + k } as const }));
    const study = studyOf({ ...base, stations });
    const told = study.bottleneck.filter(({ elasticity }) => elasticity !== null);
    expect(told.length).toBeGreaterThan(2);
    expect(told.length).toBeLessThanOrEqual(8);
    for (const row of told) {
      expect(row.elasticityMethod).toBe("paired finite difference");
      expect(row.criticalShare.mean).toBeGreaterThanOrEqual(0.01);
    }
    const untold = study.bottleneck.filter(({ elasticity }) => elasticity === null);
    for (const row of untold) expect(row.elasticityMethod).toBeNull();
  });

  it("says by which right it is claimed", () => {
    const two = scenarioOf(cellText(2));
    const [left, right] = two.stations;
    if (!left || !right) throw new Error("two stations are there");
    const byHand = (operators: number): Scenario => ({
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
    expect(elasticityMethod(dispatch("longest-waiting"))).toBe("difference");
    expect(elasticityMethod(different)).toBe("difference");
    expect([sharesCrew(byHand(1)), sharesCrew(byHand(2))]).toEqual([true, false]);
    expect([elasticityMethod(byHand(1)), elasticityMethod(byHand(2))]).toEqual(["difference", "estimate"]);
  });
});

describe("what leads", () => {
  it("takes equal stations together and keeps different ones apart", () => {
    const base = scenarioOf(cellText(2), varied);
    const names = base.stations.map(({ name }) => name);
    expect(studyOf(base).leading[0]).toMatchObject({ step: "cool", resources: names });
    const stations = base.stations.map((each, k) => ({ ...each, cavities: k + 1 }));
    expect(studyOf({ ...base, stations }).leading[0]?.resources).toHaveLength(1);
  });

  it("names the stations next where the screw binds, by the slack of the closed form", () => {
    // cell.md: max{ r + d + 2v, (v + d + m)/M } with M = 3: 6.3 against 13.05/3, so a station has 3 × 6.3 − 13.05 s to spare.
    const study = studyOf(scenarioOf(cellText(3)));
    expect(study.leading[0]).toMatchObject({ step: "recharge", resources: ["plasticator"] });
    expect(study.runnerUp).toEqual({ name: "stations", slackSeconds: expect.closeTo(3 * 6.3 - 13.05, 9) as number });
  });

  it("never names the valve or a crew that is not there", () => {
    for (const set of [[], ["valve.shift=0 s"], ["delivery.rechargeStarts=mold-closed"]]) {
      const { runnerUp } = studyOf(scenarioOf(cellText(2), ...set));
      expect(["plasticator", "stations"]).toContain(runnerUp?.name);
    }
  });
});
