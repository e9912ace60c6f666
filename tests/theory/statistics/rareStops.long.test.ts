// Holds the interval of good parts an hour to its coverage where most short runs hold no stop of the screw at all.
import { readFileSync } from "node:fs";
import { mean } from "simple-statistics";
import { expect, test } from "vitest";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { coverage, experimentOf, experiments } from "../../support/stopExperiments.ts";

function shipped(...set: readonly string[]): Scenario {
  const file = "scenarios/stops-and-repairs.yaml";
  const { scenario } = readSettled(readFileSync(file, "utf8"), { name: "stops", file, set });
  if (!scenario) throw new Error(`${file} cannot be read`);
  return scenario;
}

// The truth is a run of 40 × 400 h of the same cell with random numbers of its own [C].
test("95 % intervals of 10 replications of 4 h contain the mean of long runs in 93 % of 150 experiments", () => {
  const long = experimentOf(shipped("run.length=400 h", "run.replications=40", "run.seed=truth"));
  const found = experiments(shipped("run.length=4 h", "run.replications=10"), 150);
  const [plain, controlled] = [found.map((each) => each.plain), found.map((each) => each.controlled)];
  const share = coverage(long.plain.mean, controlled);
  console.log(
    long,
    coverage(long.plain.mean, plain),
    share,
    mean(plain.map((x) => x.halfWidth)),
    mean(controlled.map((x) => x.halfWidth)),
    mean(plain.map((x) => x.mean)),
    mean(controlled.map((x) => x.mean)),
  );
  expect(share).toBeGreaterThanOrEqual(0.93);
  expect(coverage(long.plain.mean, plain)).toBeLessThan(0.8);
  const width = (intervals: typeof plain): number => mean(intervals.map(({ halfWidth }) => halfWidth));
  expect(width(controlled)).toBeLessThan(0.7 * width(plain));
});
