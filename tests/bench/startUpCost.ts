// What a user waits for before anything is computed: the command line against a Node that does nothing, and two jobs against one.
import { spawnSync } from "node:child_process";
import path from "node:path";
import { ratioOf, type Figure } from "./figure.ts";
import { runNode, type Places } from "./places.ts";
import { takeTurns } from "./takeTurns.ts";

export function startUpCost(places: Places, rounds: number): readonly Figure[] {
  const { node, version, run } = takeTurns(
    {
      node: () => wallSeconds(["-e", "0"]),
      version: () => wallSeconds([places.commandLine, "--version"]),
      ...(helpOf(places, "run") === undefined ? {} : { run: () => wallSeconds(runCall(places, 1)) }),
    } as Readonly<Record<"node" | "version" | "run", () => number>>,
    rounds,
  );
  const figures = [ratioOf("--version / bare node", version, node, "start-up; asked: at most 1.3")];
  const ofRun = "one replication of one shift, files written; asked: at most 2.5, aim 1.6";
  return run === undefined ? figures : [...figures, ratioOf("run / bare node", run, node, ofRun)];
}

/** About 5 s of work for one job; nothing where the command line has no --jobs. */
export function jobsCost(places: Places, rounds: number): readonly Figure[] {
  if (helpOf(places, "run")?.includes("--jobs") !== true) return [];
  const few = 50;
  const secondsEach = (wallSeconds(runCall(places, few, "--jobs", "1")) - wallSeconds(runCall(places, 1))) / (few - 1);
  const replications = Math.ceil(5 / secondsEach);
  const withJobs = (jobs: number) => (): number => wallSeconds(runCall(places, replications, "--jobs", String(jobs)));
  const { one, two } = takeTurns({ one: withJobs(1), two: withJobs(2) }, rounds);
  return [ratioOf("one job / two jobs", one, two, "wall time of 5 s of work; 2 would be perfect")];
}

function helpOf({ commandLine }: Places, command: string): string | undefined {
  const { status, stdout } = spawnSync(process.execPath, [commandLine, command, "--help"], { encoding: "utf8" });
  return status === 0 ? stdout : undefined;
}

function runCall({ commandLine, scenario, folder }: Places, replications: number, ...more: string[]): string[] {
  const call = [commandLine, "run", scenario, "--length", "8 h", "--replications", String(replications)];
  return [...call, "--quiet", "--out", path.join(folder, "reports"), ...more];
}

function wallSeconds(call: readonly string[]): number {
  const before = process.hrtime.bigint();
  runNode(...call);
  return Number(process.hrtime.bigint() - before) / 1e9;
}
