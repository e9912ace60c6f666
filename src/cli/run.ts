// The command `run`: simulates one scenario, prints the answer and writes its tables.
import { eventsTable, shotsTable } from "#report/eventTables.ts";
import { runAnswer } from "#report/runAnswer.ts";
import { studyTables } from "#report/studyTables.ts";
import type { Act } from "./command.ts";
import { conductStudy } from "./conductStudy.ts";
import { exitCode, exitCodeOf } from "./exitCode.ts";
import { loadScenarios } from "./loadScenarios.ts";
import { printAnswer } from "./printAnswer.ts";
import { printIssues } from "./printIssues.ts";
import { safeName } from "./safeName.ts";
import { writeTables } from "./writeTables.ts";

export const run: Act = async (files, options, host) => {
  const { scenarios, code } = loadScenarios(files, options, host);
  const [scenario] = scenarios;
  if (!scenario) return code;
  const outcome = await conductStudy(scenario, host);
  if (outcome.kind === "stuck") {
    printIssues([outcome.issue], host);
    return exitCodeOf([outcome.issue]);
  }
  printAnswer(runAnswer(outcome.study), options, host);
  const long = options.events === true ? [eventsTable(scenario), shotsTable(scenario)] : [];
  const tables = [...studyTables([outcome.study]), ...long];
  writeTables(options.out ?? `reports/${safeName(scenario.name)}`, tables, options, host);
  return exitCode.done;
};
