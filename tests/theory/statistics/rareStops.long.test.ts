// Holds the interval of good parts an hour to its coverage where most short runs hold no stop of the screw at all.
import { readFileSync } from "node:fs";
import { mean } from "simple-statistics";
import { expect, test } from "vitest";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { coverage, experimentOf, experiments, type Experiment } from "../../support/stopExperiments.ts";

function scenarioOf(text: string, ...set: readonly string[]): Scenario {
  const { scenario, issues } = readSettled(text, { name: "stops", file: "stops.yaml", set });
  if (!scenario) throw new Error(JSON.stringify(issues, undefined, 2));
  return scenario;
}

const long = ["run.length=400 h", "run.replications=40", "run.seed=truth"];
const short = ["run.length=4 h", "run.replications=10"];

/** Interval by interval against a long run of the same cell with random numbers of its own [C]. */
function measured(text: string, count: number): { truth: number; found: readonly Experiment[] } {
  return {
    truth: experimentOf(scenarioOf(text, ...long)).plain.mean,
    found: experiments(scenarioOf(text, ...short), count),
  };
}

/** Half of the half width is enough, while the plain interval misses the truth too often. */
function expectCovered({ truth, found }: ReturnType<typeof measured>): void {
  const covered = (which: keyof Experiment): number =>
    coverage(
      truth,
      found.map((each) => each[which]),
    );
  const width = (which: keyof Experiment): number => mean(found.map((each) => each[which].halfWidth));
  expect(covered("controlled")).toBeGreaterThanOrEqual(0.93);
  expect(covered("plain")).toBeLessThan(0.8);
  expect(width("controlled")).toBeLessThan(0.5 * width("plain"));
}

test("rare stops of the screw: 150 experiments of 10 × 4 h, of which 93 % contain the mean of 40 × 400 h", () => {
  expectCovered(measured(readFileSync("scenarios/stops-and-repairs.yaml", "utf8"), 150));
});

const spareStation = `format: 1
product: { partMass: 42 g, flash: 30 % of part }
delivery: { kind: reciprocating-screw, recharge: 4 s, drop: 1.8 s }
valve: { shift: 0.25 s }
stations:
  count: 3
  cavities: 2
  steps:
    { close: 0.6 s, blow: 0.5 s, cool: 8 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s }, clear: { time: 60 s, by: machine } }
stops:
  - { name: seal, resource: every station, between: { exponential: 30 h }, repair: { lognormal: [30 min, 15 min] }, by: itself, step: hold }
  - { name: band, resource: plasticator, between: { gamma: [50 h, 25 h] }, repair: { lognormal: [40 min, 20 min] }, by: itself, step: hold }
run: { warmup: 5 min }
`;

test("rare stops of stations that cost little and of a screw that costs all: 150 experiments", () => {
  expectCovered(measured(spareStation, 150));
});
