// Every version of Node, number of jobs, locale and time zone writes the same files.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { otherNodes } from "../otherEngine/nodes.ts";
import { builtCommand, newFolder, projectFolder } from "./callBlowcell.ts";

const programs = new Map(otherNodes());
const scenarios = readdirSync(path.join(projectFolder, "scenarios")).filter((file) => file.endsWith(".yaml"));

interface Surroundings {
  readonly node: string;
  readonly jobs: number;
  readonly LANG: string;
  readonly TZ: string;
}

const surroundings: readonly Surroundings[] = [
  { node: "20", jobs: 1, LANG: "C", TZ: "UTC" },
  { node: "20", jobs: 3, LANG: "de_DE.UTF-8", TZ: "Asia/Kolkata" },
  { node: "22", jobs: 2, LANG: "tr_TR.UTF-8", TZ: "America/St_Johns" },
  { node: "24", jobs: 7, LANG: "ar_EG.UTF-8", TZ: "Pacific/Apia" },
];

/** The screen and every file of `run`, by name. */
function outputOf(scenario: string, { node, jobs, LANG, TZ }: Surroundings): Readonly<Record<string, string>> {
  const folder = newFolder();
  const call = ["run", `scenarios/${scenario}`, "--replications", "7", "--jobs", String(jobs), "--out", folder];
  const environment = { ...process.env, LANG, LC_ALL: LANG, TZ, NO_COLOR: "1" };
  const program = programs.get(node) ?? process.execPath;
  const { stdout } = spawnSync(program, [builtCommand, ...call], {
    cwd: projectFolder,
    env: environment,
    encoding: "utf8",
  });
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) => name.includes("."));
  const texts = files.toSorted().map((name) => [name, readFileSync(path.join(folder, name), "utf8")]);
  return { ...Object.fromEntries(texts), screen: stdout.replaceAll(folder, "FOLDER") };
}

test.each(scenarios)("of %s", { timeout: 600_000 }, (scenario) => {
  const [first, ...others] = surroundings.map((each) => outputOf(scenario, each));
  expect(Object.keys(first!)).toContain("throughput.csv");
  for (const other of others) expect(other).toEqual(first);
});
