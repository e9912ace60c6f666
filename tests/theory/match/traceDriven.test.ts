// The trace-driven run: it repeats a log of the model to the tick, and finds a wrong order of serving.

// The environment variable MATCH_LOGS sets another number of logs, such as the 200 of the stated power.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { allShots, anchorsOf } from "#analysis/match/deliveries.ts";
import type { Stretch } from "#analysis/match/lineLog.ts";
import { logMatch } from "#analysis/match/logMatch.ts";
import { modelLine } from "#analysis/match/modelLine.ts";
import { stepsInLog, tracedRun } from "#analysis/match/traced.ts";
import { verdictOf } from "#analysis/match/verdict.ts";
import { equivalence } from "#analysis/statistics/equivalence.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { planCell } from "#cell/layers/planCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { isLong } from "../../support/caseCount.ts";
import { scenarioOf } from "../../support/cellScenario.ts";

function shipped(name: string): Scenario {
  const file = `scenarios/${name}.yaml`;
  const { scenario } = readSettled(readFileSync(file, "utf8"), { name, file, set: [] });
  return scenario!;
}

/** Removal varies so much that a fixed rotation loses output against first-ready. */
function cell(dispatch: string, cool = 6): Scenario {
  return scenarioOf(`format: 1
product: { partMass: 42 g, flash: 30 % of part }
delivery: { kind: reciprocating-screw, recharge: { normal: [3 s, 0.1 s] }, drop: { normal: [1.4 s, 0.05 s] } }
valve: { shift: 0.25 s, dispatch: ${dispatch} }
stations:
  count: 3
  cavities: 2
  steps: { close: 0.6 s, blow: 0.5 s, cool: ${cool} s, vent: 0.5 s, open: 0.6 s, remove: { time: { gamma: [3 s, 2.35 s] } } }
run: { length: 8 h, replications: 5, seed: test, warmup: 10 min }
`);
}

const hours = 8;
const logs = Number(process.env["MATCH_LOGS"] ?? (isLong ? 24 : 1));
const logOf = (scenario: Scenario, replication: number, from = 600) =>
  modelLine({ plan: planCell(scenario), replication, from, until: from + hours * 3600 })!;

const whole = (log: Stretch) => ({ log: [log], tracedLog: [log], isTracedWhole: true });

describe("the model with the step times of its own log", () => {
  it.each(["two-molds", "one-operator", "bottle-continuous", "canister-accumulator-head", "one-station"])(
    "repeats every shot of %s to the tick",
    (name) => {
      const scenario = shipped(name);
      const log = logOf(scenario, 7, 0);
      const anchors = anchorsOf(planCell(scenario), [log]);
      expect(stepsInLog(scenario, [log]).filter(({ isTraced }) => isTraced).length).toBeGreaterThan(4);
      const { runs, difference } = tracedRun(scenario, [log], anchors);
      const logged = allShots(log, anchors, "inLog");
      expect(logged.length).toBeGreaterThan(200);
      expect(allShots(runs[0]!, anchors, "inModel").slice(0, logged.length)).toEqual(logged);
      expect(difference).toMatchObject({ mean: 0, error: 0 });
    },
  );
});

const shotsOver = (scenario: Scenario): number => {
  const run = modelLine({ plan: planCell(scenario), replication: 1, from: 600, until: 100 * 3600 })!;
  return allShots(run, anchorsOf(planCell(scenario), [run]), "inModel").length;
};

describe("a wrong order of serving", () => {
  const [right, wrong] = [cell("first-ready"), cell("alternate")];

  it.runIf(isLong)("costs about 2 % of the output", () => {
    const loss = 1 - shotsOver(wrong) / shotsOver(right);
    expect(loss).toBeGreaterThan(0.015);
    expect(loss).toBeLessThan(0.025);
  });

  it.runIf(isLong)(
    `is found in at least 95 % of ${logs} logs, and nothing is found where it is right`,
    { timeout: 7_200_000 },
    () => {
      const model = Array.from({ length: isLong ? 10 : 5 }, (_, i) => logOf(right, 1000 + i));
      const found = Array.from({ length: logs }, (_, i) => {
        const log = logOf(right, i + 1);
        const anchors = anchorsOf(planCell(right), [log]);
        const traced = (scenario: Scenario) =>
          equivalence(tracedRun(scenario, [log], anchors).difference!, 0.01).agreement;
        const unknown = { difference: undefined, runs: [] };
        const match = logMatch({ ...whole(log), model, traced: unknown, anchors, steps: [], margin: 0.05 });
        return [traced(wrong), traced(right), verdictOf(match).agreement];
      });
      const share = (place: number, agreement: string): number =>
        found.filter((each) => each[place] === agreement).length / logs;
      const shares = { wrong: share(0, "differs"), right: share(1, "agrees"), drawn: share(2, "agrees") };
      expect(Math.min(...Object.values(shares)), JSON.stringify(shares)).toBeGreaterThanOrEqual(0.95);
    },
  );
});

describe("the verdict", () => {
  const log = logOf(cell("first-ready"), 3);
  const runsOf = (scenario: Scenario) => [11, 12, 13, 14, 15].map((replication) => logOf(scenario, replication));
  const verdict = (scenario: Scenario, margin: number) => {
    const anchors = anchorsOf(planCell(scenario), [log]);
    const traced = tracedRun(scenario, [log], anchors);
    const steps = stepsInLog(scenario, [log]);
    return verdictOf(logMatch({ ...whole(log), model: runsOf(scenario), traced, anchors, steps, margin }));
  };

  it("is that a right model agrees", () => {
    expect(verdict(cell("first-ready"), 0.05)).toMatchObject({ agreement: "agrees", blame: "none" });
  });

  it.runIf(isLong)("blames the times where only they are wrong, and names the step", () => {
    const { agreement, blame, steps } = verdict(cell("first-ready", 9), 0.05);
    expect([agreement, blame]).toEqual(["differs", "times"]);
    expect(new Set(steps.map(({ name }) => name))).toEqual(new Set(["cool"]));
  });

  it.runIf(isLong)("blames the logic where only it is wrong", () => {
    expect(verdict(cell("alternate"), 0.05)).toMatchObject({ agreement: "agrees", blame: "hidden" });
    expect(verdict(cell("alternate"), 0.01).blame).toBe("logic");
  });
});
