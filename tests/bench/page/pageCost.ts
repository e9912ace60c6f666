// How long the page lets its user wait: for the first number, and after a lever moved.
import path from "node:path";
import type { Figure } from "../figure.ts";
import { median } from "../median.ts";
import { runNode, type Places } from "../places.ts";

type Times = Readonly<Record<"first" | "rough" | "final", number>>;

const meanings = [
  ["first", "page, first answer", "two-station, place Try, from the open file to the first number; goal 1,000"],
  ["rough", "page, rough answer", "from the key that moves the first lever to the first replication; goal 200"],
  ["final", "page, final answer", "from that key to the answer of `run`; goal 2,000"],
] as const;

export function pageCost({ folder, shipped, commandLine, pageTimes }: Places, rounds: number): readonly Figure[] {
  const file = path.join(folder, "page.html");
  runNode([commandLine, "page", path.join(shipped, "two-station.yaml"), "--out", file, "--quiet"]);
  const times = JSON.parse(runNode([pageTimes, file, String(rounds)])) as readonly Times[];
  return meanings.map(([name, title, meaning]) => ({
    name: title,
    value: median(times.map((each) => each[name])),
    unit: "ms",
    meaning,
  }));
}
