// The command `merge`: joins the shares of a sweep into the files of the whole.
import type { Act } from "#cli/call/command.ts";
import { exitCodeOf } from "#cli/machine/exitCode.ts";
import { readJournal } from "#cli/machine/journal.ts";
import { folderIssues } from "#cli/output/earlierRun.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { mergeShares } from "#cli/sweep/mergedRecords.ts";
import { reportSweep } from "#cli/sweep/reportSweep.ts";
import { journalName, parseRecord } from "#cli/sweep/sweepRecord.ts";

export const merge: Act = async (folders, options, host) => {
  const shares = folders.map((folder) => {
    return { folder, records: readJournal(`${folder}/${journalName}`).map(parseRecord) };
  });
  const merged = mergeShares(shares);
  if (!("plan" in merged)) {
    printIssues(merged, host);
    return exitCodeOf(merged);
  }
  const { plan, records } = merged;
  const folder = options.out ?? `reports/${plan.name}`;
  const inTheWay = folderIssues(folder, [plan.scenario], options, host);
  printIssues(inTheWay, host);
  if (inTheWay.length > 0) return exitCodeOf(inTheWay);
  return reportSweep(plan, records, folder, options, host);
};
