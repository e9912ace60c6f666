// Holds critical shares, utilization and elasticities to values calculated by hand or by reruns of the cell.
import { describe, expect, it } from "vitest";
import { elasticityMethod, sharesCrew } from "#analysis/bottleneck/elasticity.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { bottleneckWords } from "#report/words/bottleneckWords.ts";
import type { Sensitivity } from "#analysis/bottleneck/reruns.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import type { StepScale } from "#cell/layers/planCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

function studyOf(scenario: Scenario, sensitivity?: Sensitivity): Study {
  const outcome = runStudy(scenario, sensitivity);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

function resourceOf({ bottleneck }: Study, name: string) {
  const found = bottleneck.find(({ resources }) => resources.includes(name));
  if (!found) throw new Error(`no resource ${name}`);
  return found;
}

/** Of the resource `name`, the step that belongs to it. */
function stepOf(study: Study, name: string, step: string) {
  const found = resourceOf(study, name).steps.find((each) => each.step === step);
  if (!found) throw new Error(`${name} has no step ${step}`);
  return found;
}

const whole = ["run.length=13050 s", "run.warmup=0 s"];
const varied = "stations.steps.cool={ triangular: [7 s, 8 s, 9 s] }";

describe("one station with fixed times", () => {
  // By hand [C]: 1000 whole cycles of 13.05 s = 0.25 + 1.8 + 11, of which cooling takes 8 s and the circuit of the screw 6.3 s.
  const study = studyOf(scenarioOf(cellText(1), ...whole));
  const { name } = study.scenario.stations[0] ?? { name: "" };

  it("has critical shares of its steps in proportion to their times", () => {
    expect(study.bottleneck[0]).toMatchObject({
      resources: [name],
      steps: [{ step: "cool" }, { step: "drop" }, {}, {}, {}, {}, {}, {}],
    });
    expect(stepOf(study, name, "cool").share.mean).toBeCloseTo(8 / 13.05, 9);
    expect(stepOf(study, name, "drop").share.mean).toBeCloseTo(1.8 / 13.05, 9);
    expect(stepOf(study, name, "shift to port").share.mean).toBeCloseTo(0.25 / 13.05, 9);
    expect(stepOf(study, "plasticator", "recharge").share.mean).toBe(0);
  });

  it("is always active, and its screw is active except while it holds a full shot", () => {
    for (const column of ["utilization", "activeShare"] as const) {
      expect(resourceOf(study, name)[column]).toBeCloseTo(1, 9);
      expect(resourceOf(study, "plasticator")[column]).toBeCloseTo(6.3 / 13.05, 9);
      expect(resourceOf(study, "valve")[column]).toBeCloseTo(2.3 / 13.05, 9);
    }
  });

  it("gives the screw the slack of the closed form: 13.05 − 6.3 s", () => {
    expect(stepOf(study, name, "cool").slackSeconds).toBe(0);
    expect(stepOf(study, "plasticator", "recharge").slackSeconds).toBeCloseTo(6.75, 9);
    expect(resourceOf(study, name).slackPerShot).toBe(0);
    expect(resourceOf(study, "plasticator").slackPerShot).toBeCloseTo(6.75, 9);
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
    const members = (step: string) => study.scenario.stations.map(({ name }) => ({ resource: name, step }));
    const screw = stepOf(study, "plasticator", "recharge");
    const drop = stepOf(study, "plasticator", "drop");
    const cool = stepOf(study, study.scenario.stations[0]!.name, "cool");
    const tried = [
      { ...cool, steps: members("cool") },
      { ...drop, steps: members("drop") },
      { ...screw, steps: [{ resource: "plasticator", step: "recharge" }] },
    ];
    // A part of the drops belongs to the screw, the rest to the stations; the elasticity is that of the whole step.
    expect(drop.share.mean).toBeGreaterThan(0.01);
    expect(drop.share.mean).toBeLessThan(-0.9 * (drop.elasticity?.mean ?? 0));
    for (const { steps, elasticity, elasticityMethod: method } of tried) {
      expect(method).toBe("critical path, exact for a fixed order");
      const [more, less] = [1.005, 0.995].map((factor) => secondsPerPart({ steps, factor }));
      const slope = -((more ?? 0) - (less ?? 0)) / 0.01 / secondsPerPart(null);
      expect(slope).toBeLessThan(-0.05);
      expect(Math.abs(slope - (elasticity?.mean ?? 0))).toBeLessThan(0.006);
    }
  });

  it("is found by reruns for different stations, and only for steps with a large enough critical share", () => {
    const base = scenarioOf(cellText(2), varied);
    const stations = base.stations.map((each, k) => ({ ...each, open: { kind: "fixed", value: 1 + k } as const }));
    const study = studyOf({ ...base, stations }, "full");
    const rows = study.bottleneck.flatMap(({ steps }) => steps);
    const known = rows.filter(({ elasticity }) => elasticity !== null);
    expect(known.length).toBeGreaterThan(2);
    for (const row of known) expect(row.elasticityMethod).toContain("paired finite difference");
    expect(new Set(known.map(({ resources, step }) => JSON.stringify([resources, step]))).size).toBe(5);
    for (const row of rows.filter(({ share }) => share.mean > 0.1)) expect(known).toContain(row);
    const unknown = rows.filter(({ elasticity }) => elasticity === null);
    for (const row of unknown) expect(row.elasticityMethod).toBe("none: not a leading step");
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

describe("the resource that sets the pace", () => {
  it("combines equal stations and separates different ones", () => {
    const base = scenarioOf(cellText(2), varied);
    const names = base.stations.map(({ name }) => name);
    expect(studyOf(base).bottleneck[0]).toMatchObject({ resources: names });
    expect(studyOf(base).bottleneck[0]?.steps[0]).toMatchObject({ step: "cool", resources: names });
    const stations = base.stations.map((each, k) => ({ ...each, cavities: k + 1 }));
    expect(studyOf({ ...base, stations }).bottleneck[0]?.resources).toHaveLength(1);
  });

  it("is tied with another whose interval overlaps, and with none that is clearly smaller", () => {
    // Two stations with the same times in rotation, different only in the parts of a shot: each owns about half of the path.
    const base = scenarioOf(cellText(2), varied, "valve.dispatch=alternate", "delivery.recharge=2 s");
    const stations = base.stations.map((each, k) => ({ ...each, cavities: k + 1 }));
    const { bottleneck } = studyOf({ ...base, stations });
    expect(bottleneck.map(({ isTied }) => isTied)).toEqual([false, true, false, false]);
    expect(bottleneckWords({ bottleneck, states: [] })).toMatch(
      /^station [12] .* of the critical path, tied with station [12]$/u,
    );
    expect(studyOf(base).bottleneck.some(({ isTied }) => isTied)).toBe(false);
  });

  it("has the stations as runner-up when the screw sets the pace, with the slack of the closed form", () => {
    // Circuits max{ r + d + 2v, (v + d + m)/M } with M = 3, derived by hand [C]: 6.3 against 13.05/3, so the slack of a station is
    // (3 × 6.3 − 13.05) / 3 s a shot.
    const study = studyOf(scenarioOf(cellText(3)));
    expect(study.bottleneck[0]).toMatchObject({ resources: ["plasticator"] });
    expect(study.bottleneck[0]?.steps[0]).toMatchObject({ step: "recharge", resources: ["plasticator"] });
    // The whole circuit is the screw's: recharge 4 s, drop 1.8 s and two valve shifts of 0.25 s, of 6.3 s.
    // The rest is the last cycle of each station, which the end of the run cuts.
    expect(study.bottleneck[0]?.share.mean).toBeGreaterThan(0.999);
    expect(stepOf(study, "plasticator", "drop").share.mean).toBeCloseTo(1.8 / 6.3, 3);
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
