// The example scripts that divide a sweep: the shares of each, merged, are the files of one call.
import { execFileSync, spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { cellText } from "../support/cellScenario.ts";
import { builtCommand, newFolder, projectFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
const programs = path.join(folder, "bin");
mkdirSync(programs);
writeFileSync(path.join(programs, "blowcell"), `#!/bin/sh\nexec "${process.execPath}" "${builtCommand}" "$@"\n`);
chmodSync(path.join(programs, "blowcell"), 0o755);
writeFileSync(path.join(folder, "two-station.yaml"), cellText(2).replace("length: 2 h", "length: 1 h"));

const examples = path.join(projectFolder, "scenarios/sweep-examples");
const PATH = `${programs}:${process.env["PATH"] ?? ""}`;

function shell(args: readonly string[], environment: Readonly<Record<string, string>>): void {
  execFileSync("sh", args, { cwd: folder, env: { ...process.env, PATH, ...environment }, stdio: "pipe" });
}

function filesOf(out: string): readonly (readonly [string, string])[] {
  const names = readdirSync(path.join(folder, out));
  return names.map((name) => [name, readFileSync(path.join(folder, out, name), "utf8")]);
}

async function merge(out: string): Promise<void> {
  const shares = readdirSync(path.join(folder, out)).map((name) => `${out}/${name}`);
  expect((await callHere(["merge", ...shares, "--out", `${out}-whole`], { folder })).code).toBe(0);
}

const hasParallel = spawnSync("parallel", ["--version"]).status === 0;

describe("the shares of an example script", () => {
  beforeAll(async () => {
    const varied = ["--vary", "stations.*.steps.cool=-1 s..+1 s by 0.5 s", "--vary", "valve.shift=0.2 s,0.3 s"];
    await callHere(["sweep", "two-station.yaml", ...varied, "--out", "whole"], { folder });
  });

  it("are those of a whole, as tasks of a Slurm job array", async () => {
    for (const task of ["1", "2"]) {
      const array = { SLURM_ARRAY_TASK_ID: task, SLURM_ARRAY_TASK_MAX: "2" };
      shell([path.join(examples, "slurm.sh"), "two-station.yaml", "slurm"], array);
    }
    await merge("slurm");
    expect(filesOf("slurm-whole")).toEqual(filesOf("whole"));
  });

  it("are those of a whole, as pods of an indexed Kubernetes Job", async () => {
    const job = parse(readFileSync(path.join(examples, "kubernetes-job.yaml"), "utf8")) as KubernetesJob;
    const { completionMode, completions, template } = job.spec;
    expect(completionMode).toBe("Indexed");
    const [container] = template.spec.containers;
    expect(container?.env).toContainEqual({ name: "SHARES", value: String(completions) });
    const command = (container?.command.at(-1) ?? "")
      .replaceAll("/sweep/share", "pods/share")
      .replaceAll("/sweep/", "");
    for (let index = 0; index < completions; index += 1) {
      shell(["-c", command], { JOB_COMPLETION_INDEX: String(index), SHARES: String(completions) });
    }
    await merge("pods");
    expect(filesOf("pods-whole")).toEqual(filesOf("whole"));
  });

  it.skipIf(!hasParallel)("are those of a whole, with GNU parallel", () => {
    shell([path.join(examples, "gnu-parallel.sh"), "two-station.yaml", "parallel"], { JOBS: "1", SHARES: "3" });
    expect(filesOf("parallel/whole")).toEqual(filesOf("whole"));
  });
});

interface KubernetesJob {
  readonly spec: {
    readonly completionMode: string;
    readonly completions: number;
    readonly template: {
      readonly spec: {
        readonly containers: readonly {
          readonly env: readonly { readonly name: string; readonly value: string }[];
          readonly command: readonly string[];
        }[];
      };
    };
  };
}
