// Holds the benchmark's kernels to the results of the whole model, so that their times are comparable.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { benchScenario } from "./benchScenario.ts";
import { runKernel } from "./kernel.ts";
import { openKernelCell } from "./kernelCell.ts";
import { runRecursion } from "./recursion.ts";

const text = readFileSync(new URL("two-station.yaml", import.meta.url), "utf8");
const scenario = benchScenario(text, "5 d");
const plan = planCell(scenario);

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
