// The time of the command line relative to an empty Node process, and of one job relative to two.
import { spawnSync } from "node:child_process";
import path from "node:path";
import { invariant } from "#foundation/invariant.ts";
import { ratioOf, type Figure } from "./figure.ts";
import { median } from "./median.ts";
import { runNode, type Places } from "./places.ts";
import { takeTurns } from "./takeTurns.ts";

/** With this variable Node reads several hundred certificates at every start, which dominates short runs. */
const certificates = "NODE_EXTRA_CA_CERTS";

/** In the given environment, and without extra certificates if it has any. */
export function startUpCost(places: Places, rounds: number): readonly Figure[] {
  const asItIs = startUpIn(process.env, "", places, rounds);
  const { [certificates]: extra, ...without } = process.env;
  return extra === undefined ? asItIs : [...asItIs, ...startUpIn(without, `, no ${certificates}`, places, rounds)];
}

function startUpIn(env: NodeJS.ProcessEnv, where: string, places: Places, rounds: number): readonly Figure[] {
  const { node, version, run } = takeTurns(
    {
      node: () => wallSeconds(["-e", "0"], env),
      version: () => wallSeconds([places.commandLine, "--version"], env),
      run: () => wallSeconds(runCall(places, 1), env),
    },
    rounds,
  );
  const ofRun = "one replication of one shift, files written";
  const added = run.map((seconds, round) => (seconds - node[round]!) * 1000);
  return [
    ratioOf(`--version / bare node${where}`, version, node, "start of the program; limit 1.3"),
    ratioOf(`run / bare node${where}`, run, node, `${ofRun}; limit 2.5, target 1.6`),
    {
      name: `run - bare node${where}`,
      value: median(added),
      unit: "ms",
      meaning: `${ofRun}: time in addition to Node`,
    },
  ];
}

/** Measures about 5 s of work for one job. */
export function jobsCost(places: Places, rounds: number): readonly Figure[] {
  const few = 50;
  const secondsEach = (wallSeconds(runCall(places, few, "--jobs", "1")) - wallSeconds(runCall(places, 1))) / (few - 1);
  const replications = Math.ceil(5 / secondsEach);
  const withJobs = (jobs: number) => (): number => wallSeconds(runCall(places, replications, "--jobs", String(jobs)));
  const { one, two, both } = takeTurns(
    { one: withJobs(1), two: withJobs(2), both: () => wallSecondsOfTwo(places, replications) },
    rounds,
  );
  const twice = one.map((seconds) => 2 * seconds);
  return [
    ratioOf("one job / two jobs", one, two, "wall time of 5 s of work; 2 is the ideal"),
    ratioOf(
      "one job / two processes",
      twice,
      both,
      "twice that work, by two calls at once: what this machine can reach",
    ),
    ratioOf(
      "two processes / two jobs",
      both,
      two.map((seconds) => 2 * seconds),
      "for the same work; goal 0.95",
    ),
  ];
}

function runCall({ commandLine, scenario, folder }: Places, replications: number, ...more: string[]): string[] {
  const call = [commandLine, "run", scenario, "--length", "8 h", "--replications", String(replications)];
  return [...call, "--quiet", "--replace", "--out", path.join(folder, "reports"), ...more];
}

/** Two calls with one job each, begun together by one shell, until both are over. */
function wallSecondsOfTwo(places: Places, replications: number): number {
  const [first, second] = ["a", "b"].map((name) => {
    const call = runCall({ ...places, folder: path.join(places.folder, name) }, replications, "--jobs", "1");
    return [process.execPath, ...call].map((word) => `'${word}'`).join(" ");
  });
  const before = process.hrtime.bigint();
  const { status } = spawnSync("sh", ["-c", `${first!} & ${second!} && wait $!`], { stdio: "ignore" });
  invariant(status === 0, "both calls do their work");
  return Number(process.hrtime.bigint() - before) / 1e9;
}

function wallSeconds(call: readonly string[], env = process.env): number {
  const before = process.hrtime.bigint();
  runNode(call, env);
  return Number(process.hrtime.bigint() - before) / 1e9;
}
