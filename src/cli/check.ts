// The command `check`: reads scenarios and tells what can be told without simulating; writes nothing.
import { idealCycle } from "#analysis/idealCycle.ts";
import { stepTimes } from "#analysis/stepTimes.ts";
import { checkAnswer } from "#report/checkAnswer.ts";
import type { Act } from "./command.ts";
import { loadScenarios } from "./loadScenarios.ts";
import { printAnswer } from "./printAnswer.ts";

export const check: Act = (files, options, host) => {
  const { scenarios, code } = loadScenarios(files, options, host);
  const answers = scenarios.map((scenario) =>
    checkAnswer({ scenario, times: stepTimes(scenario), ideal: idealCycle(scenario) }),
  );
  printAnswer(answers.join("\n"), options, host);
  return code;
};
