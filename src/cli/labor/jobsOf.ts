// How many worker threads a call may use.
import type { Issue } from "#foundation/issue.ts";
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";

const most = 256;

export function jobsOf({ jobs }: Options, host: Host): number | Issue {
  if (jobs === undefined) return host.cores;
  const count = Number(jobs);
  if (/^\d+$/.test(jobs) && count >= 1 && count <= most) return count;
  return {
    code: "option-value",
    severity: "error",
    path: "--jobs",
    message: `--jobs is no number of worker threads`,
    value: jobs,
    expected: `a whole number from 1 to ${most}`,
    remedy: "Leave it out to use one a processor.",
    fate: "file",
  };
}
