// The command `check`: reads scenarios and tells what can be told without simulating; writes nothing.
import { idealCycle } from "#analysis/idealCycle.ts";
import { stepTimes } from "#analysis/stepTimes.ts";
import { checkAnswer } from "#report/checkAnswer.ts";
import type { Act } from "./command.ts";
import { circuitsTable, idealCycleTable } from "#report/idealTables.ts";
import { loadScenarios } from "./loadScenarios.ts";
import { printResult } from "./printResult.ts";

export const check: Act = (files, options, host) => {
  const { scenarios, code } = loadScenarios(files, options, host);
  const ideals = scenarios.map((scenario) => ({ scenario, ideal: idealCycle(scenario) }));
  const answers = ideals.map(({ scenario, ideal }) => checkAnswer({ scenario, times: stepTimes(scenario), ideal }));
  const tables = [idealCycleTable(ideals), circuitsTable(ideals)];
  const studies = scenarios.map((scenario) => ({ scenario, warnings: [] }));
  printResult({ command: "check", studies, tables, answer: answers.join("\n") }, options, host);
  return code;
};
