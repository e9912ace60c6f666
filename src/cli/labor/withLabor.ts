// Opens workers and progress for a command, and closes them when it ends or fails.
import type { Options } from "#cli/call/command.ts";
import { exitCodeOf } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { jobsOf } from "./jobsOf.ts";
import { openLabor, type Labor } from "./labor.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { openStages, reportTally, type Stages } from "./stages.ts";

/** More threads than processors save nothing and take 20 MB each; a few more do no harm. */
const mostUseful = ({ cores }: Host): number => Math.max(8, 2 * cores);

export async function withLabor(
  options: Options,
  host: Host,
  act: (labor: Labor, stages: Stages) => Promise<number>,
): Promise<number> {
  const jobs = jobsOf(options, host);
  if (typeof jobs !== "number") {
    printIssues([jobs], host);
    return exitCodeOf([jobs]);
  }
  const used = Math.min(jobs, mostUseful(host));
  if (used < jobs && options.quiet !== true)
    host.report(`${used} worker threads are used: this machine has ${host.cores} processors\n`);
  const labor = openLabor(used, host);
  try {
    const code = await act(labor, openStages(options, host));
    reportTally(labor, options, host);
    return code;
  } finally {
    await labor.end();
  }
}
