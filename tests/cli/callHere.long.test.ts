// A call in the process of the test answers and writes what the built program does, so that most tests may call it so.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { cellText } from "../support/cellScenario.ts";
import { callBlowcell, newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const brief = ["--length", "1 h", "--replications", "2"];

const [here, built] = [newFolder(), newFolder()];
const text = cellText(2).replace("cool: 8 s", "cool: { triangular: [7 s, 8 s, 9 s] }");
for (const folder of [here, built]) writeFileSync(path.join(folder, "cell.yaml"), text);

/** In this order, since some read what others write. */
const calls: readonly (readonly string[])[] = [
  ["run", "cell.yaml", "--events", "--out", "run", "--length", "20 min", "--replications", "1"],
  ["run", "cell.yaml", "--out", "run", "--seed", "other", ...brief],
  ["compare", "cell.yaml", "--variant", "slow: valve.shift=0.3 s", "--out", "compare", "--json", ...brief],
  ["check", "cell.yaml", "absent.yaml"],
  ["sweep", "cell.yaml", "--vary", "stations.count=1,2", "--out", "sweep", ...brief],
  ["merge", "sweep", "--out", "merge"],
  ["choose", "cell.yaml", "--vary", "stations.count=1,2", "--out", "choose", "--replications", "20", "--length", "1 h"],
  ["promise", "cell.yaml", "--order", "500 parts", "--replications", "20", "--out", "promise"],
  ["fit", "run/events.csv", "--out", "fit"],
  ["match", "cell.yaml", "run/events.csv", "--out", "match"],
  ["record", "cell.yaml", "--out", "record"],
  ["new", "mine.yaml"],
  ["explain", "cool", "xyzzyxyzzy"],
  ["schema", "--result"],
  ["shcema"],
];

function filesIn(folder: string): Readonly<Record<string, string>> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const files = entries.map(({ parentPath, name }) => path.join(parentPath, name));
  return Object.fromEntries(files.map((file) => [path.relative(folder, file), readFileSync(file, "latin1")]));
}

it.each(calls.map((args) => ({ call: args.join(" "), args })))(
  "$call answers what the built program does",
  async ({ args }) => {
    expect(await callHere(args, { folder: here })).toEqual(callBlowcell(args, { folder: built }));
  },
);

it("writes the files of the built program, to the last byte", () => {
  const files = filesIn(here);
  expect(Object.keys(files).length).toBeGreaterThan(40);
  expect(files).toEqual(filesIn(built));
});
