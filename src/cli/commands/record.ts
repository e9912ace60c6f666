// The command `record`: prints and writes a form for timing a cell by stopwatch.
import { timingForm } from "#analysis/match/timingForm.ts";
import type { Act } from "#cli/call/command.ts";
import { readBackIssue, recordIssue } from "#cli/call/recordOptions.ts";
import { runName } from "#cli/call/runName.ts";
import { exitCode } from "#cli/machine/exitCode.ts";
import { version } from "#cli/machine/version.ts";
import { printAnswer } from "#cli/output/printAnswer.ts";
import { refuse } from "#cli/output/printIssues.ts";
import { plainText } from "#foundation/plainText.ts";
import { recordCsv, recordPage, recordText } from "#report/match/recordForm.ts";
import { loadScenarios } from "./loadScenarios.ts";
import { isTable } from "./match.ts";

export const record: Act = async ([file = ""], options, host) => {
  if (isTable(file)) return refuse([readBackIssue(file)], host);
  const { loaded, code } = loadScenarios([file], options, host);
  const [first] = loaded;
  if (first === undefined || code !== exitCode.done) return code;
  const { scenario } = first;
  const folder =
    options.out ?? `reports/${runName(`${scenario.name}-record`, options.set ?? [], options.name?.trim())}`;
  // Readings that were typed in are nowhere else.
  if (options.replace !== true && host.whatIs(`${folder}/record.csv`) !== undefined)
    return refuse([recordIssue(folder)], host);
  const form = { scenario, stations: timingForm(scenario) };
  await host.writeFiles(folder, [
    { name: "record.csv", text: recordCsv(form) },
    { name: "record.html", text: recordPage(form, version) },
  ]);
  printAnswer(() => recordText(form, host.width), options, host);
  if (options.quiet !== true) host.report(`${plainText(`record.csv and record.html are in ${folder}`)}\n`);
  return exitCode.done;
};
