// Holds queues, machine repair and production lines to textbook values; they run on the cell's own interpreter and samplers.
import { describe, expect, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { fixedCell } from "../../support/fixedCell.ts";
import { numberInSystem, over, runQueue, type NumberInSystem, type QueueRun } from "../../support/queueRuns.ts";
import { exponential, machineRepair, openQueue, saturatedLine } from "../../support/queueTables.ts";

/** The interval contains the theoretical value and is narrow enough to show a 5 % error. */
function expectTheory(interval: Interval, theory: number): void {
  expect(interval.halfWidth).not.toBeNull();
  expect(Math.abs(interval.mean - theory), `${interval.mean} against ${theory}`).toBeLessThanOrEqual(
    interval.halfWidth!,
  );
  expect(interval.halfWidth!).toBeLessThan(0.05 * theory);
}

const fixed = (value: number): Distribution => ({ kind: "fixed", value });

interface OpenRun {
  readonly run: QueueRun;
  readonly system: NumberInSystem;
}

/** Runs of an open queue that start empty and are long enough to make the start negligible. */
function open(arrival: number, service: Distribution, servers: number, length: number): OpenRun[] {
  return runQueue(openQueue(exponential(arrival), service, servers), 40, 0, length).map((run) => ({
    run,
    system: numberInSystem(run.times("arrivals"), run.times("served"), servers, length),
  }));
}

const intervalOf = <Item>(items: readonly Item[], figure: (item: Item) => number): Interval =>
  meanInterval(items.map(figure), 0.99);

/** Mean number in line: the number in the system less the number in service. */
const waiting = ({ run, system }: OpenRun): number => system.mean - run.meanIn("busy");

describe("open queues", () => {
  // Hillier and Lieberman, Introduction to Operations Research, chapter on queueing theory [M+C].
  test("M/M/1 and M/M/2 with λ 2, μ 3: Lq 4/3 and 1/12, Wq 2/3 and 1/24", () => {
    const one = open(1 / 2, exponential(1 / 3), 1, 12_000);
    expectTheory(intervalOf(one, waiting), 4 / 3);
    expectTheory(
      intervalOf(one, (each) => waiting(each) / each.run.rate("arrivals")),
      2 / 3,
    );
    const two = open(1 / 2, exponential(1 / 3), 2, 20_000);
    expectTheory(intervalOf(two, waiting), 1 / 12);
    expectTheory(
      intervalOf(two, (each) => waiting(each) / each.run.rate("arrivals")),
      1 / 24,
    );
  });

  // Read in the tests of an open-source package [R], recomputed from Erlang's C formula [C].
  test("M/M/2 with λ 9, μ 5: P(wait) 0.85263, Lq 7.674, W 1.053", () => {
    const runs = open(1 / 9, exponential(1 / 5), 2, 12_000);
    expectTheory(
      intervalOf(runs, (each) => each.system.shareAbove),
      0.85263,
    );
    expectTheory(intervalOf(runs, waiting), 7.674);
    expectTheory(
      intervalOf(runs, (each) => each.system.mean / each.run.rate("arrivals")),
      1.053,
    );
  });

  // Formula of Pollaczek and Khinchine, Lq = ρ²(1 + cv²) / (2(1 − ρ)), at ρ = 0.8 [C].
  test.each<[string, Distribution, number]>([
    ["exponential", exponential(0.8), 3.2],
    ["Erlang-2", { kind: "gamma", mean: 0.8, sd: 0.8 / Math.sqrt(2) }, 2.4],
    ["uniform", { kind: "uniform", min: 0, max: 1.6 }, 2.1333],
    ["constant", fixed(0.8), 1.6],
  ])("M/G/1 with %s service has the Pollaczek-Khinchine Lq", (_name, service, theory) => {
    expectTheory(intervalOf(open(1, service, 1, 30_000), waiting), theory);
  });
});

describe("operators and machines", () => {
  // Taha, Operations Research: An Introduction, machine servicing model: 22 machines, 0.5 calls an hour, 12 min each [M+C].
  test.each([
    [1, 0.4544],
    [2, 0.8015],
  ])("22 machines and %i operators have Taha's productive share", (operators, theory) => {
    const runs = runQueue(machineRepair(22, operators, exponential(2), exponential(0.2)), 20, 50, 1500);
    expectTheory(
      over(runs, (run) => run.meanIn("running") / 22),
      theory,
    );
  });

  // Winston, Operations Research: Applications and Algorithms, machine repair model: 5 machines, 2 repairers, failure rate 1/30
  // and repair rate 1/3 a day: L 0.465, W 3.08 [M+C].
  test("5 machines and 2 repairers have Winston's number of broken machines and days until repaired", () => {
    const runs = runQueue(machineRepair(5, 2, exponential(30), exponential(3)), 30, 1000, 60_000);
    const broken = (run: QueueRun): number => 5 - run.meanIn("running");
    expectTheory(over(runs, broken), 0.465);
    expectTheory(
      over(runs, (run) => broken(run) / run.rate("failures")),
      3.08,
    );
  });

  // Ashcroft, The productivity of several machines under the care of one operator, J. R. Stat. Soc. B 12 (1950) 145:
  // constant service, p = service / mean running time = 0.10 [M+C].
  test.each([
    [2, 1.8102],
    [4, 3.5791],
    [8, 6.8532],
  ])("%i machines with constant service have Ashcroft's number running", (machines, theory) => {
    const runs = runQueue(machineRepair(machines, 1, exponential(1), fixed(0.1)), 20, 50, 2500);
    expectTheory(
      over(runs, (run) => run.meanIn("running")),
      theory,
    );
  });
});

describe("saturated lines", () => {
  // Hunt, Operations Research 4 (1956) 674; Hillier and Boling, Operations Research 15 (1967) 286 [M+C].
  test.each([
    [2, 0, 2 / 3],
    [3, 0, 0.5641],
    [2, 1, 3 / 4],
    [2, 2, 4 / 5],
    [2, 6, 8 / 9],
  ])("%i exponential stations with %i places between them have Hunt's throughput", (stations, buffer, theory) => {
    const runs = runQueue(saturatedLine(stations, buffer, exponential(1)), 20, 100, 8000);
    expectTheory(
      over(runs, (run) => run.rate("made")),
      theory,
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

  // Buzacott, Automatic transfer lines with buffer stocks, Int. J. Prod. Research 5 (1967): 1 / (1 + Σ MTTR / MTBF) where
  // stations fail only while they work [M+C].
  test("two stations that fail only while they work have Buzacott's efficiency", () => {
    const stops = { run: exponential(120), repair: exponential(10) };
    const runs = runQueue(saturatedLine(2, 0, fixed(0.25), stops), 20, 0, 20_000);
    expectTheory(
      over(runs, (run) => 0.25 * run.rate("made")),
      0.85714,
    );
  });
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
