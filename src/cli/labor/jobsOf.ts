// How many worker threads a call may use.
import type { Issue } from "#foundation/issue.ts";
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";

const most = 256;

export function jobsOf({ jobs }: Options, host: Host): number | Issue {
  if (jobs === undefined) return host.cores;
  const count = Number(jobs);
  if (/^\d+$/.test(jobs) && count >= 1 && count <= most) return count;
  const isWhole = /^-?\d+$/.test(jobs);
  return {
    code: isWhole ? "out-of-range" : "not-whole",
    severity: "error",
    option: "--jobs",
    path: "",
    message: isWhole ? `${jobs} is outside 1 to ${most}.` : `\`${jobs}\` is not a whole number.`,
    value: jobs,
    expected: `a whole number from 1 to ${most}`,
    remedy: "Leave it out to use one worker thread a processor.",
    fate: "file",
  };
}
