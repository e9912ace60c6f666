// Holds the 95 % interval to its coverage, over independent experiments on models with known answers.
import { describe, expect, test } from "vitest";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { isLong } from "../../support/caseCount.ts";
import { fixedCell } from "../../support/fixedCell.ts";
import { runQueue } from "../../support/queueRuns.ts";
import { exponential, machineRepair, saturatedLine } from "../../support/queueTables.ts";

const experiments = isLong ? 400 : 150;
const replications = 10;

/** Share of experiments whose interval contains the true value; each experiment has ten replications of its own. */
function coverage(truth: number, values: readonly number[]): number {
  const covered = Array.from({ length: experiments }, (_, i) => {
    const { mean, halfWidth } = meanInterval(values.slice(i * replications, (i + 1) * replications));
    return Math.abs(mean - truth) <= halfWidth!;
  });
  return covered.filter(Boolean).length / experiments;
}

function expectCoverage(share: number): void {
  expect(share).toBeGreaterThanOrEqual(isLong ? 0.92 : 0.9);
  expect(share).toBeLessThanOrEqual(isLong ? 0.975 : 0.99);
}

describe("the 95 % interval covers the truth in 92 to 97.5 % of 400 experiments, in 90 to 99 % of 150", () => {
  // Throughput 2/3: Hunt, Sequential arrays of waiting lines, Operations Research 4 (1956) 674 [M+C].
  test("for two exponential stations without a buffer", () => {
    const runs = runQueue(saturatedLine(2, 0, exponential(1)), experiments * replications, 20, 320);
    expectCoverage(
      coverage(
        2 / 3,
        runs.map((run) => run.rate("made")),
      ),
    );
  });

  // Machine repair M/M/1//2 in closed form: with r = λ/μ, P0 = 1/(1 + 2r + 2r²), mean down = (2r + 4r²) P0 [C].
  test.runIf(isLong)("for two machines and one operator", () => {
    const r = 0.25;
    const down = (2 * r + 4 * r * r) / (1 + 2 * r + 2 * r * r);
    const runs = runQueue(machineRepair(2, 1, exponential(4), exponential(1)), experiments * replications, 40, 640);
    expectCoverage(
      coverage(
        2 - down,
        runs.map((run) => run.meanIn("running")),
      ),
    );
  });

  // The cell as a finite-source queue: exponential mold phase 11 s and shot 1.8 s, two stations: 551.59 shots an hour [C].
  test.runIf(isLong)("for two stations on one screw with exponential times", () => {
    const one = { recharge: 0, drop: 1.8, close: 0, cool: 11, remove: 0 };
    const cell = fixedCell({ stations: [one, one], shift: 0, length: 1500 });
    const stations = cell.stations.map((station) => ({
      ...station,
      drop: { by: "time" as const, time: exponential(1.8) },
      cool: exponential(11),
    }));
    const plan = planCell({ ...cell, stations, run: { ...cell.run, warmup: 300, seed: "coverage" } });
    const hours = 1200 / 3600;
    const values = Array.from({ length: experiments * replications }, (_, replication) => {
      const record = runCell(plan, { replication });
      return record.stations.reduce((sum, station) => sum + station.shots, 0) / hours;
    });
    // Birth-death process of waiting molds with r = 1.8/11: 3600/1.8 × (1 − P(no mold waits)) = 551.594 shots an hour [C].
    const ratio = 1.8 / 11;
    const empty = 1 / (1 + 2 * ratio + 2 * ratio * ratio);
    expect((3600 / 1.8) * (1 - empty)).toBeCloseTo(551.59, 2);
    expectCoverage(coverage((3600 / 1.8) * (1 - empty), values));
  });
});
