// Holds queues, a station that fails and the cell as a queue to computed values; they run on the cell's own interpreter.
import { describe, expect, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { firstCases } from "../../support/caseCount.ts";
import { fixedCell } from "../../support/fixedCell.ts";
import { openRuns, over, runQueue, waiting } from "../../support/queueRuns.ts";
import { exponential, saturatedLine } from "../../support/queueTables.ts";

/** The interval contains the theoretical value and is narrow enough to show a 5 % error. */
function expectTheory(interval: Interval, theory: number): void {
  expect(interval.halfWidth).not.toBeNull();
  expect(Math.abs(interval.mean - theory), `${interval.mean} against ${theory}`).toBeLessThanOrEqual(
    interval.halfWidth!,
  );
  expect(interval.halfWidth!).toBeLessThan(0.05 * theory);
}

const fixed = (value: number): Distribution => ({ kind: "fixed", value });

describe("open queues", () => {
  // Formula of Pollaczek and Khinchine, Lq = ρ²(1 + cv²) / (2(1 − ρ)), at ρ = 0.8 [C].
  const services: readonly [string, Distribution, number][] = [
    ["constant", fixed(0.8), 1.6],
    ["uniform", { kind: "uniform", min: 0, max: 1.6 }, 2.1333],
    ["Erlang-2", { kind: "gamma", mean: 0.8, sd: 0.8 / Math.sqrt(2) }, 2.4],
    ["exponential", exponential(0.8), 3.2],
  ];
  test.each(firstCases(services, 1))(
    "M/G/1 with %s service has the Pollaczek-Khinchine Lq",
    (_name, service, theory) => {
      expectTheory(meanInterval(openRuns(1, service, 1, 30_000).map(waiting), 0.99), theory);
    },
  );
});

// Availability MTBF / (MTBF + MTTR) of a renewal process, with 480 and 15 [C].
test("one station that fails works for the share MTBF / (MTBF + MTTR)", () => {
  const stops = { run: exponential(480), repair: exponential(15) };
  const runs = runQueue(saturatedLine(1, 0, fixed(5), stops), 20, 0, 200_000);
  expectTheory(
    over(runs, (run) => run.meanIn("working")),
    480 / 495,
  );
});

describe("the cell as a finite-source queue", () => {
  // Machine repair with the screw as the operator: exponential mold phase, mean 11 s; shot, mean 1.8 s; instant recharge, no
  // valve time. Shots an hour computed independently of this project [C].
  const cellOf = (stations: number, drop: Distribution): Scenario => {
    const cell = fixedCell({
      stations: Array.from({ length: stations }, () => ({ recharge: 0, drop: 1.8, close: 0, cool: 11, remove: 0 })),
      shift: 0,
    });
    const varied = cell.stations.map((station) => ({
      ...station,
      drop: { by: "time" as const, time: drop },
      cool: exponential(11),
    }));
    return { ...cell, stations: varied, run: { ...cell.run, length: 40 * 3600, warmup: 3600, seed: "finite source" } };
  };

  test.each<[string, number, Distribution, number]>([
    ["exponential", 1, exponential(1.8), 281.25],
    ["exponential", 2, exponential(1.8), 551.59],
    ["fixed", 1, fixed(1.8), 281.25],
    ["fixed", 2, fixed(1.8), 556.43],
  ])("%s shots, %i stations: has the theoretical shots an hour", (_name, stations, drop, theory) => {
    const plan = planCell(cellOf(stations, drop));
    const rates = Array.from({ length: 30 }, (_, replication) => {
      const record = runCell(plan, { replication });
      return record.stations.reduce((sum, station) => sum + station.shots, 0) / 39;
    });
    const interval = meanInterval(rates, 0.99);
    expectTheory(interval, theory);
    // Narrow enough to distinguish exponential from fixed shots.
    expect(interval.halfWidth!).toBeLessThan(0.004 * theory);
  });
});
