// Compares the engine with simscript, an independent event library, and both with queueing theory.
import { describe, expect, it } from "vitest";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { compileTable, type Program } from "#engine/compiler/program.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { ProcessSpec, StepTable } from "#engine/compiler/stepTable.ts";
import type { NextTime, QueueRun } from "../../otherEngine/simscriptModels.ts";
import { openStream } from "../../support/draws/openStream.ts";
import { TableSampler } from "../../support/draws/tableSampler.ts";

const { Exponential, runMachineRepair, runSingleServer } = await import("../../otherEngine/simscriptModels.ts").catch(
  (cause: unknown) => {
    throw new Error("simscript, which only this test needs, is not installed: run npm ci --prefix tests/otherEngine", {
      cause,
    });
  },
);

const seed = "other engine";
const replications = 10;
const exponential = (mean: number) => ({ distributions: [{ distribution: { kind: "exponential", mean } as const }] });

/** λ 2 and μ 3 give ρ 2/3 and L = λ/(μ − λ) = 2 (Hillier and Lieberman, Introduction to Operations Research [M+C]). */
const singleServer = { interval: 1 / 2, service: 1 / 3, number: 2, until: 5000 };

const singleServerTable: StepTable = {
  resources: [
    { name: "source", states: [{ name: "open", kind: "working" }] },
    { name: "server", states: [{ name: "idle", kind: "waiting" }] },
  ],
  places: [{ name: "line", tokens: 0 }],
  processes: [
    {
      name: "source",
      resource: "source",
      steps: [
        { name: "arrive", time: exponential(singleServer.interval), gives: [{ place: "line" }], counts: { in: 1 } },
      ],
    },
    {
      name: "server",
      resource: "server",
      steps: [
        { name: "serve", needs: [{ place: "line" }], time: exponential(singleServer.service), counts: { out: 1 } },
      ],
    },
  ],
};

/**
 * Five machines with a life of 30 days and two repairers with 3 days a repair: L = 0.465 machines are down
 * (Winston, Operations Research: Applications and Algorithms, machine repair model [M+C]).
 */
const repair = { machines: 5, repairers: 2, life: 30, repair: 3, number: 0.465, until: 10_000 };
const machineNames = Array.from({ length: repair.machines }, (_, k) => `machine ${k + 1}`);

function machine(name: string): ProcessSpec {
  const repairers = [{ place: "repairers" }];
  return {
    name,
    resource: name,
    steps: [
      { name: "live", time: exponential(repair.life), counts: { in: 1 } },
      { name: "repair", needs: repairers, time: exponential(repair.repair), gives: repairers, counts: { out: 1 } },
    ],
  };
}

const repairTable: StepTable = {
  resources: machineNames.map((name) => ({ name, states: [{ name: "live", kind: "working" }] })),
  places: [{ name: "repairers", tokens: repair.repairers }],
  processes: machineNames.map(machine),
};

/** Runs a table for `until` seconds; an entity is in the system from its `in` to its `out`. */
function runTable(program: Program, replication: number, until: number): QueueRun {
  const simulation = new Simulation(program, { seed, replication }, ["in", "out"]);
  const end = until * TICKS_PER_SECOND;
  simulation.runUntil(end);
  const { ticks, counters } = simulation.marks;
  const isOut = Array.from(ticks, (_, i) => program.counters[counters[i]!] === "out");
  const area = Array.from(ticks).reduce((sum, tick, i) => sum + (isOut[i] ? tick - end : end - tick), 0);
  return { meanNumber: area / end, ends: Array.from(ticks).filter((_, i) => isOut[i]) };
}

/** The same draws as in the table, in ticks. */
function sameDraws(replication: number, resource: string, step: string, mean: number): NextTime {
  const stream = openStream(seed, replication, resource, step);
  const sampler = new TableSampler({ kind: "exponential", mean }, { unit: TICKS_PER_SECOND });
  return () => sampler.ticks(stream());
}

/** Draws of the library's own generator, in seconds. */
function libraryDraws(mean: number, number: number): NextTime {
  const distribution = new Exponential(mean, 7919 * number);
  return () => distribution.sample();
}

async function each(run: (replication: number) => QueueRun | Promise<QueueRun>): Promise<number[]> {
  const numbers: number[] = [];
  for (let replication = 0; replication < replications; replication++) {
    numbers.push((await run(replication)).meanNumber);
  }
  return numbers;
}

/** Both 99 % intervals contain the theoretical value, are narrower than 5 % of it, and agree with each other. */
function expectAgreement(ours: readonly number[], theirs: readonly number[], theory: number): void {
  const intervals = [ours, theirs].map((numbers) => meanInterval(numbers, 0.99));
  for (const { mean, halfWidth } of intervals) {
    expect(halfWidth).toBeLessThan(0.05 * theory);
    expect(Math.abs(mean - theory)).toBeLessThan(halfWidth!);
  }
  const [a, b] = intervals;
  expect(Math.abs(a!.mean - b!.mean)).toBeLessThan(Math.sqrt(a!.halfWidth! ** 2 + b!.halfWidth! ** 2));
}

describe("a single server with exponential times", () => {
  const program = compileTable(singleServerTable);
  const { interval, service, number, until } = singleServer;

  it("ends every service at the same tick in both engines, given the same draws", async () => {
    const arrivals = sameDraws(0, "source", "arrive", interval);
    const services = sameDraws(0, "server", "serve", service);
    const theirs = await runSingleServer(arrivals, services, 1000 * TICKS_PER_SECOND);
    const ours = runTable(program, 0, 1000);
    expect(ours.ends.length).toBeGreaterThan(1900);
    expect(theirs.ends.slice(0, ours.ends.length)).toEqual(ours.ends);
    expect(runTable(program, 1, 1000).ends).not.toEqual(ours.ends);
  });

  it("has the theoretical number of customers in both engines", async () => {
    const ours = await each((replication) => runTable(program, replication, until));
    const theirs = await each((replication) =>
      runSingleServer(libraryDraws(interval, 2 * replication + 1), libraryDraws(service, 2 * replication + 2), until),
    );
    expectAgreement(ours, theirs, number);
  });
});

describe("five machines and two repairers", () => {
  const program = compileTable(repairTable);
  const { repairers, until, number } = repair;

  it("end every repair at the same tick in both engines, given the same draws", async () => {
    const machines = machineNames.map((name) => ({
      life: sameDraws(0, name, "live", repair.life),
      repair: sameDraws(0, name, "repair", repair.repair),
    }));
    const theirs = await runMachineRepair(machines, repairers, until * TICKS_PER_SECOND);
    const ours = runTable(program, 0, until);
    expect(ours.ends.length).toBeGreaterThan(1400);
    expect(theirs.ends.slice(0, ours.ends.length)).toEqual(ours.ends);
  });

  it("have the theoretical number of machines down in both engines", async () => {
    const ours = await each((replication) => runTable(program, replication, until));
    const theirs = await each((replication) => {
      const draws = (mean: number, k: number): NextTime => libraryDraws(mean, 100 * replication + k);
      const machines = machineNames.map((_, k) => ({
        life: draws(repair.life, k + 1),
        repair: draws(repair.repair, k + 11),
      }));
      return runMachineRepair(machines, repairers, until);
    });
    expectAgreement(ours, theirs, number);
  });
});
