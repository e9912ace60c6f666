// Holds reruns with a step shorter and longer to their budget, their order and their slope.
import { describe, expect, it } from "vitest";
import { leadingSteps, SCALE_FACTORS } from "#analysis/bottleneck/leadingSteps.ts";
import { SETTLED, type Sensitivity } from "#analysis/bottleneck/reruns.ts";
import { centralSlope, oneSidedSlope } from "#analysis/bottleneck/rerunSlopes.ts";
import type { BottleneckStep } from "#analysis/bottleneck/bottleneck.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { beginStudy, concludeStudy, nextWanted, withAnswers, type StudyState } from "#analysis/study/study.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";

const shipped = (name: string, ...set: string[]): Scenario =>
  scenarioOf(shippedText(name), name, ["run.warmup=10 min", ...set]);

/** The batches of tasks of a study in their order, and its end. */
function made(scenario: Scenario, sensitivity?: Sensitivity): { batches: number[]; state: StudyState } {
  const run = replicationRunner(scenario);
  const batches: number[] = [];
  let state = beginStudy(scenario, sensitivity);
  for (let tasks = nextWanted(state); tasks.length > 0; tasks = nextWanted(state)) {
    batches.push(tasks.length);
    state = withAnswers(state, tasks.map(run));
  }
  return { batches, state };
}

function stepsOf(state: StudyState): readonly BottleneckStep[] {
  const outcome = concludeStudy(state);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study.bottleneck.flatMap(({ steps }) => steps);
}

const rerunsIn = ({ answers }: StudyState) => answers.map(({ task }) => task).filter(({ scale }) => scale !== null);

describe("the budget of reruns", () => {
  it.each([8, 11, 12, 20])("is half of %i replications, half of them shorter and half longer", (replications) => {
    const scenario = shipped("one-operator-four-molds", `run.replications=${replications}`);
    const { batches, state } = made(scenario);
    const reruns = rerunsIn(state);
    expect(batches[0]).toBe(replications);
    expect(reruns.length).toBeGreaterThanOrEqual(4);
    expect(reruns.length).toBeLessThanOrEqual(replications / 2);
    expect(reruns.filter(({ scale }) => scale!.factor > 1)).toHaveLength(reruns.length / 2);
    // Each step begins with the first replications and leaves none out.
    const stepOf = (task: (typeof reruns)[number]): string => JSON.stringify(task.scale!.steps);
    for (const step of new Set(reruns.map(stepOf))) {
      const own = reruns.filter((task) => stepOf(task) === step).map(({ replication }) => replication);
      expect(own.toSorted((a, b) => a - b)).toEqual(own.map((_, i) => i + 1));
    }
  });

  it("reaches no step with fewer than 8 replications, and the method says so", () => {
    const { batches, state } = made(shipped("one-operator-four-molds", "run.replications=7"));
    expect(batches).toEqual([7]);
    const [first] = stepsOf(state);
    expect(first).toMatchObject({ elasticity: null, elasticityMethod: "none: fewer than 8 replications" });
  });

  it("is left where all leading steps are settled", () => {
    // The trimmer has all of the critical path, and with equal parts its elasticity hardly varies.
    const { batches, state } = made(shipped("slow-trimmer", "run.replications=20", "run.length=4 h"));
    expect(rerunsIn(state).length).toBeLessThan(10);
    expect(batches.slice(1).every((size) => size === 4 || size === 2)).toBe(true);
    const [trim] = stepsOf(state);
    expect(trim!.elasticityMethod).toBe("paired finite difference");
    expect(trim!.elasticity!.halfWidth).toBeLessThanOrEqual(SETTLED);
  });

  it("goes to the leading steps first; all others say why they have none", () => {
    const { state } = made(shipped("one-operator-four-molds", "run.replications=20"));
    const steps = stepsOf(state);
    const leading = leadingSteps(state.scenario, state.answers.slice(0, 20));
    const known = steps.filter(({ elasticity }) => elasticity !== null).map(({ step }) => step);
    expect(known).toEqual(leading.slice(0, known.length).map(({ step }) => step));
    for (const { elasticity, elasticityMethod } of steps) {
      expect(elasticityMethod.startsWith("none: ")).toBe(elasticity === null);
      if (elasticity) expect(elasticityMethod.endsWith("above 0.05")).toBe(elasticity.halfWidth! > SETTLED);
    }
    expect(steps.map(({ elasticityMethod }) => elasticityMethod)).toContain("none: half the work of the run is spent");
  });

  it("is not used with off, and with full every leading step runs in all replications", () => {
    const scenario = shipped("one-operator-four-molds", "run.replications=3");
    const off = made(scenario, "off");
    expect(off.batches).toEqual([3]);
    expect(stepsOf(off.state)[0]).toMatchObject({ elasticity: null, elasticityMethod: "none: sensitivity is off" });
    const full = made(scenario, "full");
    expect(full.batches).toEqual([3, leadingSteps(scenario, full.state.answers.slice(0, 3)).length * 2 * 3]);
  });
});

describe("the slope of reruns", () => {
  const { shorter, longer } = SCALE_FACTORS;
  const answer = (replication: number, factor: number | null, value: number): ReplicationAnswer => ({
    task: { replication, scale: factor === null ? null : { steps: [], factor } },
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

  it("is −1 for the only step of a cycle, and 0 for a step without effect", () => {
    // By hand [C]: seconds a part are proportional to the step.
    const only = [answer(1, shorter, 1000 / shorter), answer(2, longer, 1000 / longer)];
    const asItIs = [answer(1, null, 1000), answer(2, null, 1000)];
    expect(centralSlope(only.slice(0, 1), only.slice(1))?.mean).toBeCloseTo(-1, 12);
    expect(oneSidedSlope(asItIs, only)?.mean).toBeCloseTo(-1, 12);
    const same = [answer(1, longer, 1000), answer(2, shorter, 1000)];
    expect(oneSidedSlope(asItIs, same)?.mean).toBeCloseTo(0, 12);
    expect(centralSlope([answer(1, shorter, 1000)], [answer(1, longer, 1000)])?.mean).toBeCloseTo(0, 12);
  });

  it("is the mean of both sides of a kink", () => {
    // By hand [C]: 2 % longer costs 2 % of seconds a part, 2 % shorter brings nothing.
    const asItIs = [answer(1, null, 1000), answer(2, null, 1000)];
    const kink = [answer(1, longer, 1000 / longer), answer(2, shorter, 1000)];
    expect(oneSidedSlope(asItIs, kink)?.mean).toBeCloseTo(-0.5, 12);
  });

  it("leaves out pairs without parts", () => {
    expect(centralSlope([answer(1, shorter, 0)], [answer(1, longer, 0)])).toBeNull();
    expect(oneSidedSlope([answer(1, null, 0)], [answer(1, longer, 10)])).toBeNull();
    expect(oneSidedSlope([answer(1, null, 10)], [answer(1, longer, 0)])).toBeNull();
    expect(centralSlope([answer(1, shorter, 10)], [answer(1, longer, 0)])).toBeNull();
    expect(centralSlope([answer(1, shorter, 0)], [answer(1, longer, 10)])).toBeNull();
  });
});
