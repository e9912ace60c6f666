// The cost of a station cycle: the whole model with its observation, relative to the hand-written kernel and to bare draws.
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
    ratioOf("model / kernel", model, kernel, "station cycle of the whole model; limit 2, target 1.3"),
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
