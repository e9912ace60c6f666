// The command `check`: reads scenarios and prints everything that needs no simulation; writes no file.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { stationRanges } from "#analysis/window/stationRanges.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { stepTimes } from "#analysis/ideal/stepTimes.ts";
import { checkAnswer } from "#report/answers/checkAnswer.ts";
import { windowTables } from "#report/tables/studyTables.ts";
import type { Act } from "#cli/call/command.ts";
import { circuitsTable, idealCycleTable } from "#report/tables/idealTables.ts";
import { loadScenarios } from "./loadScenarios.ts";
import { printResult } from "#cli/output/printResult.ts";

export const check: Act = (files, options, host) => {
  const { loaded, code } = loadScenarios(files, options, host);
  const scenarios = loaded.map(({ scenario }) => scenario);
  const ideals = scenarios.map((scenario) => {
    const ideal = idealCycle(scenario);
    const ranges = options.range === true ? stationRanges(scenario, ideal) : [];
    return { scenario, ideal, windows: stationWindows(scenario, ideal), ranges };
  });
  const answer = (): string =>
    ideals
      .map((found) => checkAnswer({ ...found, times: stepTimes(found.scenario) }, host.width, options.units))
      .join("\n");
  const tables = [idealCycleTable(ideals), circuitsTable(ideals), ...windowTables(ideals)];
  const studies = scenarios.map((scenario) => ({ scenario, warnings: [] }));
  printResult({ command: "check", studies, tables, answer }, options, host);
  return code;
};
