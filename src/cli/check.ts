// The command `check`: reads scenarios and tells what can be told without simulating; writes nothing.
import { idealCycle } from "#analysis/idealCycle.ts";
import { stationWindows } from "#analysis/stationWindow.ts";
import { stepTimes } from "#analysis/stepTimes.ts";
import { checkAnswer } from "#report/checkAnswer.ts";
import { windowTables } from "#report/studyTables.ts";
import type { Act } from "./command.ts";
import { circuitsTable, idealCycleTable } from "#report/idealTables.ts";
import { loadScenarios } from "./loadScenarios.ts";
import { printResult } from "./printResult.ts";

export const check: Act = (files, options, host) => {
  const { loaded, code } = loadScenarios(files, options, host);
  const scenarios = loaded.map(({ scenario }) => scenario);
  const ideals = scenarios.map((scenario) => {
    const ideal = idealCycle(scenario);
    return { scenario, ideal, windows: stationWindows(scenario, ideal) };
  });
  const answer = (): string =>
    ideals.map((found) => checkAnswer({ ...found, times: stepTimes(found.scenario) }, host.width)).join("\n");
  const tables = [idealCycleTable(ideals), circuitsTable(ideals), ...windowTables(ideals)];
  const studies = scenarios.map((scenario) => ({ scenario, warnings: [] }));
  printResult({ command: "check", studies, tables, answer }, options, host);
  return code;
};
