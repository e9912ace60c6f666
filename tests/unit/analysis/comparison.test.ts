// Holds comparisons to an independently computed example and to Bonferroni's inequality.
import { describe, expect, it } from "vitest";
import { comparableScenarios, overOneSpan, compareStudies } from "#analysis/study/comparison.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import { summarizeMeasures } from "#analysis/study/summarizeMeasures.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const scenario = scenarioOf(cellText(2));
const outcome = runStudy(scenario);
if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
const anyStudy = outcome.study;

/** A study with these values, one for each replication; null for a replication without the measure. */
function studyOf(name: string, values: readonly (number | null)[]): Study {
  const answers = values.map((value, i): ReplicationAnswer => {
    const rows = value === null ? [] : [{ resource: CELL, measure: "good parts per hour", unit: "1/h", value }];
    const task = { replication: i + 1, scale: null };
    return {
      task,
      measures: rows,
      resin: { bought: 0, surplus: 0 },
      stateShares: [],
      elementTimes: [],
      criticalShares: [],
      longestActive: [],
      cycles: [],
      parisons: [],
      standstill: null,
    };
  });
  return { ...anyStudy, scenario: { ...scenario, name }, measures: summarizeMeasures(answers) };
}

// Example data; the paired difference 1.1200 ± 0.15745 (95 %) is computed independently with the t distribution of SciPy [C].
const first = [52.1, 49.8, 51.3, 50.7, 52.9, 48.8, 51.9, 50.2, 49.5, 51.6];
const second = [50.9, 48.9, 50.1, 49.6, 51.4, 47.9, 50.8, 49.1, 48.7, 50.2];
const base = studyOf("base", second);

describe("a comparison", () => {
  it("gives the paired interval, which is a seventh of the unpaired one", () => {
    const [row] = compareStudies(base, [studyOf("other", first)]);
    expect(row).toMatchObject({ base: "base", other: "other", resource: CELL, pairs: 10, verdict: "more" });
    expect(row?.difference).toBeCloseTo(1.12, 10);
    expect(row?.halfWidth).toBeCloseTo(0.15745, 5);
    expect(row?.simultaneousHalfWidth).toBeCloseTo(0.15745, 5);
    expect(row?.ratio).toBeCloseTo(508.8 / 497.6, 12);
    expect(row?.correlation).toBeGreaterThan(0.9);
  });

  it("widens the simultaneous interval with the number of scenarios compared", () => {
    const rows = compareStudies(base, [studyOf("one", first), studyOf("two", first)]);
    expect(rows).toHaveLength(2);
    for (const row of rows) {
      expect(row.halfWidth).toBeCloseTo(0.15745, 5);
      // Quantiles of Student's t: t(0.9875, 9) = 2.685 [M], t(0.975, 9) = 2.262157 by SciPy [C].
      expect((row.simultaneousHalfWidth ?? 0) / (row.halfWidth ?? 1)).toBeCloseTo(2.685 / 2.262157, 3);
    }
  });

  it("has the verdict `less` or `no difference seen` according to the simultaneous interval", () => {
    expect(compareStudies(studyOf("base", first), [studyOf("other", second)])[0]?.verdict).toBe("less");
    expect(compareStudies(base, [studyOf("same", second)])[0]).toMatchObject({
      verdict: "no difference seen",
      difference: 0,
    });
    const noisy = second.map((value, i) => value + (i % 2 === 0 ? 3 : -2.9));
    expect(compareStudies(base, [studyOf("noisy", noisy)])[0]?.verdict).toBe("no difference seen");
  });

  it("gives no interval for a single pair", () => {
    const [row] = compareStudies(studyOf("base", [50]), [studyOf("other", [60])]);
    expect(row).toMatchObject({ difference: 10, halfWidth: null, simultaneousHalfWidth: null, pairs: 1 });
    expect(row?.verdict).toBe("one pair, no interval");
  });

  it("pairs only replications that have the measure on both sides", () => {
    const [row] = compareStudies(studyOf("base", [50, null, 52]), [studyOf("other", [51, 99, 54])]);
    expect(row).toMatchObject({ pairs: 2, difference: 1.5 });
  });

  it("gives no ratio to a base of 0", () => {
    expect(compareStudies(studyOf("base", [0, 0]), [studyOf("other", [1, 2])])[0]?.ratio).toBeNull();
  });
});

describe("scenarios that are compared", () => {
  it("share the base's seed, length and replications, and after settling the longest run and warm-up", () => {
    const runs = [
      { length: 7200, replications: 3, seed: "a", warmup: 60, start: "running" },
      { length: 3600, replications: 9, seed: "b", warmup: 600, start: "cold" },
    ] as const;
    const comparable = comparableScenarios(runs.map((run) => ({ ...scenario, run })));
    const settled = comparable.map((each) => ({ scenario: each, warnings: [] }));
    const shared = overOneSpan(settled).map((each) => each.scenario.run);
    expect(shared[0]).toEqual({ length: 7200, replications: 3, seed: "a", warmup: 600, start: "running" });
    expect(shared[1]).toEqual({ length: 7200, replications: 3, seed: "a", warmup: 600, start: "cold" });
  });

  it("use common random numbers: the same cell under another name has no difference", () => {
    const varied = scenarioOf(cellText(2), "stations.steps.cool={ normal: [8 s, 1 s] }");
    const twins = comparableScenarios([varied, { ...varied, name: "twin", run: { ...varied.run, seed: "else" } }]);
    const studies = twins
      .map((twin) => runStudy(twin))
      .flatMap((found) => (found.kind === "found" ? [found.study] : []));
    const [one, ...others] = studies;
    if (!one) throw new Error("a study is found");
    for (const row of compareStudies(one, others))
      expect(row).toMatchObject({ difference: 0, verdict: "no difference seen" });
  });
});
