// Opens workers and progress for a command, and closes them when it ends or fails.
import type { Options } from "#cli/call/command.ts";
import { exitCodeOf } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { jobsOf } from "./jobsOf.ts";
import { openLabor, type Labor } from "./labor.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { openStages, reportTally, type Stages } from "./stages.ts";

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
  const labor = openLabor(jobs, host);
  try {
    const code = await act(labor, openStages(options, host));
    reportTally(labor, options, host);
    return code;
  } finally {
    await labor.end();
  }
}
