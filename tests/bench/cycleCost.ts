// What one station cycle costs: the whole model with all that it observes, against the hand-written kernel and against bare draws.
import path from "node:path";
import { ratioOf, type Figure } from "./figure.ts";
import { median } from "./median.ts";
import { runNode, type Places } from "./places.ts";
import { takeTurns } from "./takeTurns.ts";
import type { WorkName } from "./works.ts";

export function cycleCost({ folder, scenario }: Places, rounds: number): readonly Figure[] {
  const measure = (name: WorkName) => (): number => Number(runNode([path.join(folder, "oneWork.js"), name, scenario]));
  const { model, logged, kernel, recursion, sampling, draw } = takeTurns(
    {
      model: measure("model"),
      logged: measure("logged"),
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
  return [
    ratioOf("model / kernel", model, kernel, "station cycle of the whole model; asked: at most 2, aim 1.3"),
    ratioOf("model with log / kernel", logged, kernel, "the same with every change of a state kept as numbers"),
    ratioOf("model with log / model", logged, model, "what the log adds"),
    ratioOf("kernel / draw", kernel, draw, "kernel's station cycle in bare alea draws; asked: at most 40"),
    ratioOf("model / draw", model, draw, "whole model's station cycle in bare alea draws"),
    ratioOf("sampling / draw", sampling, draw, "the ten draws of a cycle with their quantiles, in bare draws"),
    ratioOf("recursion / kernel", recursion, kernel, "the cell without events, draws and sums only: the floor"),
    time("model", model, "a station cycle: states, counts, marks and binding chain kept"),
    time("kernel", kernel, "a station cycle: every timed step an event, only shots kept"),
    time("draw", draw, "one alea draw of one stream in a bare loop"),
  ];
}
