// The processor time of `run` relative to the same run without sensitivities, for every shipped scenario.
import { readdirSync } from "node:fs";
import path from "node:path";
import { ratioOf, type Figure } from "./figure.ts";
import { runNode, type Places } from "./places.ts";
import { takeTurns } from "./takeTurns.ts";

export function sensitivityCost(places: Places, rounds: number): readonly Figure[] {
  const files = readdirSync(places.shipped).filter((name) => name.endsWith(".yaml"));
  return files.map((file) => {
    const secondsAt = (depth: string) => (): number => userSeconds(places, file, depth);
    const { few, off } = takeTurns({ few: secondsAt("few"), off: secondsAt("off") }, rounds);
    return ratioOf(`${file}, run / run without sensitivities`, few, off, "user time of one job; limit 1.6");
  });
}

function userSeconds({ folder, shipped, commandLine }: Places, file: string, depth: string): number {
  const usage = path.join(folder, "printUsage.js");
  const out = path.join(folder, "sensitivities");
  const call = [
    "run",
    path.join(shipped, file),
    "--changes",
    "off",
    "--sensitivity",
    depth,
    "--jobs",
    "1",
    "--quiet",
    "--replace",
    "--out",
    out,
  ];
  const { seconds } = JSON.parse(runNode(["--import", usage, commandLine, ...call])) as { readonly seconds: number };
  return seconds;
}
