// Holds the benchmark's kernels to the results of the whole model, so that their times are comparable.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { benchScenario } from "./benchScenario.ts";
import { runKernel } from "./kernel.ts";
import { openKernelCell, type ShotTicks } from "./kernelCell.ts";
import { compileKernel, writeKernelData } from "./kernelData.ts";
import { runRecursion } from "./recursion.ts";

const text = readFileSync(new URL("two-station.yaml", import.meta.url), "utf8");
const scenario = benchScenario(text, "5 d");
const plan = planCell(scenario);

const folder = mkdtempSync(path.join(tmpdir(), "blowcell-kernel-"));
const compiled = compileKernel(fileURLToPath(new URL("twoStation.cpp", import.meta.url)), folder);

function runCompiled(replication: number): ShotTicks {
  const call = [writeKernelData(scenario, replication, folder)];
  const { stdout } = spawnSync(compiled!, call, { encoding: "utf8", maxBuffer: 1 << 26 });
  const lines = stdout.trim().split("\n");
  const shotsOf = (station: string): number[] =>
    lines.filter((line) => line.startsWith(station)).map((line) => Number(line.slice(2)));
  return [shotsOf("0"), shotsOf("1")];
}

// Where there is no g++ the benchmark leaves this kernel out as well.
describe.skipIf(compiled === undefined)("the kernel in C++", () => {
  it.each([0, 1, 7])("delivers every shot of replication %i at the same tick as the whole model", (replication) => {
    const shots = runCompiled(replication);
    expect(shots[0].length + shots[1].length).toBeGreaterThan(60_000);
    expect(shots).toEqual(runCell(plan, { replication }).stations.map((station) => station.shotTicks));
  });
});

describe.each([
  ["the event kernel", runKernel],
  ["the recursion", runRecursion],
])("%s", (_, kernel) => {
  it.each([0, 1, 7])("delivers every shot of replication %i at the same tick as the whole model", (replication) => {
    const stations = runCell(plan, { replication }).stations;
    const shots = kernel(openKernelCell(scenario, replication));
    expect(shots[0].length + shots[1].length).toBeGreaterThan(60_000);
    expect(shots).toEqual(stations.map((station) => station.shotTicks));
  });
});

it("the shots of another replication differ", () => {
  expect(runKernel(openKernelCell(scenario, 1))[0][0]).not.toBe(runKernel(openKernelCell(scenario, 2))[0][0]);
});

it("the model draws ten uniforms a station cycle, one for each step", () => {
  const rows = plan.program.rows.filter((row) => row.draw && !row.draw.samplers.some((sampler) => sampler.isFixed));
  // Eight steps of each station; recharge and shift to neutral are shared.
  expect(rows).toHaveLength(2 * 8 + 2);
});
