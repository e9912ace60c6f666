// The paths of the benchmark, passed by the script that bundles it, and the call of Node in a separate process.
import { spawnSync } from "node:child_process";
import { invariant } from "#foundation/invariant.ts";

export interface Places {
  /** Folder of the bundled programs and temporary files. */
  readonly folder: string;
  readonly scenario: string;
  /** The kernel in C++. */
  readonly kernelSource: string;
  /** Folder of the shipped scenarios. */
  readonly shipped: string;
  readonly commandLine: string;
  /** The script that measures the page; it is not bundled, because it opens a browser. */
  readonly pageTimes: string;
  readonly baseline: string;
}

/** The output of the process; throws if it fails, because the time of a failed process is meaningless. */
export function runNode(call: readonly string[], env = process.env): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, call, { encoding: "utf8", env });
  invariant(status === 0, "a measured process does its work", { call: call.join(" "), status, stderr });
  return stdout;
}
