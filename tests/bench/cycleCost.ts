// The cost of a station cycle: the whole model with its observation, relative to the hand-written kernels and to bare draws.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { invariant } from "#foundation/invariant.ts";
import { benchScenario, workLength } from "./benchScenario.ts";
import { ratioOf, type Figure } from "./figure.ts";
import { compileKernel, writeKernelData } from "./kernelData.ts";
import { median } from "./median.ts";
import { runNode, type Places } from "./places.ts";
import { takeTurns } from "./takeTurns.ts";
import type { WorkName } from "./works.ts";

/** Passes of the kernel in C++, which needs no warm-up; one takes a hundredth of a second. */
const passes = "45";

export function cycleCost(places: Places, rounds: number): readonly Figure[] {
  const { folder, scenario } = places;
  const inCpp = cppMeasure(places);
  const measure = (name: WorkName) => (): number => Number(runNode([path.join(folder, "oneWork.js"), name, scenario]));
  const { model, logged, cpp, kernel, recursion, sampling, draw } = takeTurns(
    {
      model: measure("model"),
      logged: measure("logged"),
      cpp: inCpp ?? ((): number => NaN),
      kernel: measure("kernel"),
      recursion: measure("recursion"),
      sampling: measure("sampling"),
      draw: measure("draw"),
    },
    rounds,
  );
  const time = (name: string, values: readonly number[], meaning: string): Figure => {
    return { name, value: median(values), unit: "ns", meaning: `CPU time of ${meaning}` };
  };
  const againstCpp = [
    ratioOf("model / C++", model, cpp, "station cycle of the whole model, against the unobserved kernel in C++"),
    ratioOf("kernel / C++", kernel, cpp, "the same kernel in JavaScript and in C++"),
    time("C++", cpp, "a station cycle of the unobserved kernel in C++"),
  ];
  if (!inCpp) process.stderr.write("There is no g++: the kernel in C++ is left out.\n");
  return [
    ...(inCpp ? againstCpp : []),
    ratioOf("model / kernel", model, kernel, "station cycle of the whole model, against the kernel in JavaScript"),
    ratioOf("model with log / kernel", logged, kernel, "the same with the event log kept as numbers"),
    ratioOf("model with log / model", logged, model, "cost of the event log"),
    ratioOf("kernel / draw", kernel, draw, "station cycle of the kernel in bare alea draws; limit 40"),
    ratioOf("model / draw", model, draw, "station cycle of the whole model in bare alea draws"),
    ratioOf("sampling / draw", sampling, draw, "the ten draws of a cycle with their quantiles, in bare draws"),
    ratioOf("recursion / kernel", recursion, kernel, "the cell without events, only draws and sums: the lower bound"),
    time("model", model, "a station cycle with states, counts, marks and critical path"),
    time("kernel", kernel, "a station cycle with every timed step as an event and only shots kept"),
    time("draw", draw, "one alea draw of one stream in a bare loop"),
  ];
}

/** Nothing where there is no compiler. */
function cppMeasure({ folder, scenario, kernelSource }: Places): (() => number) | undefined {
  const program = compileKernel(kernelSource, folder);
  if (program === undefined) return undefined;
  const data = writeKernelData(benchScenario(readFileSync(scenario, "utf8"), workLength), 0, folder);
  return () => {
    const { status, stdout } = spawnSync(program, [data, passes], { encoding: "utf8" });
    invariant(status === 0, "the kernel in C++ does its work", { status });
    return Number(stdout);
  };
}
