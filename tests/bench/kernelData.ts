// The two-station cell as numbers for the kernel in C++ (twoStation.cpp), and that kernel compiled.
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { invariant } from "#foundation/invariant.ts";
import { CELLS, EXACT_CELLS, FINER } from "#core/border/numbers.ts";
import { openStreams } from "#engine/distributions/stream.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { openStream } from "../support/draws/openStream.ts";
import { runKernel } from "./kernel.ts";
import { openKernelCell, type DrawnStep } from "./kernelCell.ts";

const END = EXACT_CELLS / (CELLS * FINER);
const UNIT = 2 ** 32;

/** Compiles the kernel into the folder; returns the program, or nothing where there is no g++. */
export function compileKernel(source: string, folder: string): string | undefined {
  if (spawnSync("g++", ["--version"]).status !== 0) return undefined;
  const program = path.join(folder, "twoStation");
  // No fused products: they round once where the core rounds twice.
  const call = ["-O2", "-std=c++17", "-Wall", "-ffp-contract=off", source, "-o", program];
  const { status, stderr } = spawnSync("g++", call, { encoding: "utf8" });
  invariant(status === 0, "the kernel in C++ compiles", { stderr });
  return program;
}

/** Writes what the kernel reads; returns the file. */
export function writeKernelData(scenario: Scenario, replication: number, folder: string): string {
  const { stations, toPort, toNeutral, untilTick } = openKernelCell(scenario, replication);
  const steps = [...stations.flatMap((station) => [station.recharge, ...station.steps]), toPort, toNeutral];
  const streamKeys = [...new Set(steps.map(({ names }) => JSON.stringify(names)))];
  const tables = [...new Set(steps.map(({ sampler }) => sampler.table))];
  const states = openStreams(
    scenario.run.seed,
    replication,
    streamKeys.map((key) => JSON.parse(key) as DrawnStep["names"]),
  );
  const shots = runKernel(openKernelCell(scenario, replication));
  // No stream gives more numbers than there are shots, and one for each step under way at the end.
  const most = shots[0].length + shots[1].length + steps.length;
  const stepNumbers = steps.map(({ names, sampler }) => {
    const { location, scale, least, mass, table } = sampler;
    const draw = openStream(scenario.run.seed, replication, names.resource, names.step);
    const ends = Array.from({ length: most }, draw).filter((u) => u < END || u >= 1 - END);
    const exact = ends.flatMap((u) => [u * UNIT, sampler.exactTicks(u)]);
    const stream = streamKeys.indexOf(JSON.stringify(names));
    return [stream, tables.indexOf(table), location, scale, least, mass, ends.length, ...exact];
  });
  const numbers = [
    [untilTick, streamKeys.length],
    [...states].map((value, i) => (i % 4 === 3 ? value : value * UNIT)),
    [tables.length],
    ...tables.map((table) => [...table]),
    ...stepNumbers,
  ];
  const file = path.join(folder, "cell.bin");
  writeFileSync(file, Float64Array.from(numbers.flat()));
  return file;
}
