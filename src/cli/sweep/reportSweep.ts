// Prints a sweep and writes its files, the same for one call and for merged shares.
import type { Issue } from "#foundation/issue.ts";
import { sweepAnswer } from "#report/answers/sweepAnswer.ts";
import { sweepPage } from "#report/page/sweepPage.ts";
import { sweepTable, type Sweep } from "#report/tables/asked/sweepTable.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "#cli/call/command.ts";
import { exitCode, exitCodeOf } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { journalLine } from "#cli/machine/journal.ts";
import { version } from "#cli/machine/version.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { printResult } from "#cli/output/printResult.ts";
import { writeTables } from "#cli/output/writeTables.ts";
import { journalName, type PointRecord, type SweepPlan } from "./sweepRecord.ts";

/** The folder of a share is not that of another share. */
export function scenarioOfShare({ scenario, shard }: SweepPlan): Scenario {
  const { call } = scenario;
  if (shard === undefined || call === undefined) return scenario;
  return { ...scenario, call: { ...call, options: [...call.options, `shard ${shard}`] } };
}

export async function reportSweep(
  plan: SweepPlan,
  records: readonly PointRecord[],
  folder: string,
  options: Options,
  host: Host,
): Promise<number> {
  const inOrder = records.toSorted((one, other) => one.index - other.index);
  const sweep: Sweep = { name: plan.scenario.name, paths: plan.paths, points: inOrder };
  const refused = groupedIssues(sweep, ({ outcome }) => (outcome.kind === "refused" ? outcome.issues : []));
  const warnings = groupedIssues(sweep, ({ outcome }) => (outcome.kind === "found" ? outcome.warnings : []));
  printIssues(refused, host);
  if (inOrder.length > 0 && inOrder.every(({ outcome }) => outcome.kind === "refused")) return exitCodeOf(refused);
  const { units = "si" } = options;
  const scenario = scenarioOfShare(plan);
  const tables = [sweepTable(sweep)];
  printResult(
    {
      command: "sweep",
      studies: [{ scenario, warnings }],
      tables,
      answer: () => sweepAnswer(sweep, scenario, host.width, units),
    },
    options,
    host,
  );
  const page = sweepPage({ version, sweep, scenario, refused, warnings, units });
  const text = [plan, ...inOrder].map((record) => journalLine(JSON.stringify(record))).join("");
  const others = [{ name: journalName, text }];
  await writeTables({ folder, name: plan.name, tables, scenarios: [scenario], page, others }, options, host);
  const isOpen = inOrder.some(({ outcome }) => outcome.kind === "found" && !outcome.isDecided);
  return refused.length > 0 ? exitCodeOf(refused) : isOpen ? exitCode.undecided : exitCode.done;
}

/** The same issue of several points stands once, with their number and the first of them. */
function groupedIssues(sweep: Sweep, issuesOf: (point: Sweep["points"][number]) => readonly Issue[]): readonly Issue[] {
  const groups = new Map<string, { readonly issue: Issue; readonly at: string; count: number }>();
  for (const point of sweep.points) {
    const at = sweep.paths.map((path, i) => `${path}=${point.values[i] ?? ""}`).join(", ");
    for (const issue of issuesOf(point)) {
      const key = JSON.stringify([issue.code, issue.option, issue.path, issue.message]);
      const group = groups.get(key);
      if (group) group.count += 1;
      else groups.set(key, { issue, at, count: 1 });
    }
  }
  return [...groups.values()].map(({ issue, at, count }) => {
    const where = count === 1 ? `At the point ${at}` : `At ${count} points, the first ${at}`;
    return { ...issue, message: `${where}: ${issue.message}` };
  });
}
