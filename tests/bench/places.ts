// Where the benchmark finds what it runs, handed over by the script that bundled it, and how it runs that in a process of its own.
import { spawnSync } from "node:child_process";
import { invariant } from "#foundation/invariant.ts";

export interface Places {
  /** Folder of the bundled programs, and for files that come and go. */
  readonly folder: string;
  readonly scenario: string;
  readonly commandLine: string;
  readonly baseline: string;
}

/** What the process prints; a benchmark of something that failed would be a lie. */
export function runNode(call: readonly string[], env = process.env): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, call, { encoding: "utf8", env });
  invariant(status === 0, "a measured process does its work", { call: call.join(" "), status, stderr });
  return stdout;
}
