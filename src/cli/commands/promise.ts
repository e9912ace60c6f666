// The command `promise`: runs an order until its due date is decided, prints the answer and writes its tables.
import { orderOf } from "#analysis/promise/orderCampaigns.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { promiseAnswer, promiseFinding } from "#report/answers/promiseAnswer.ts";
import { promisePage } from "#report/page/promisePage.ts";
import { promiseLeversTables } from "#report/tables/asked/promiseLeversTable.ts";
import { promiseTables } from "#report/tables/asked/promiseTables.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { chanceOf } from "#cli/call/chanceOption.ts";
import type { Act, Options } from "#cli/call/command.ts";
import { callTexts } from "#cli/call/options.ts";
import { runName } from "#cli/call/runName.ts";
import { conductLevers } from "#cli/labor/conductLevers.ts";
import { conductOrder } from "#cli/labor/conductOrder.ts";
import { withLabor } from "#cli/labor/withLabor.ts";
import { exitCode, exitCodeOf } from "#cli/machine/exitCode.ts";
import { version } from "#cli/machine/version.ts";
import { folderIssues } from "#cli/output/earlierRun.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { printResult } from "#cli/output/printResult.ts";
import { writeTables } from "#cli/output/writeTables.ts";
import { loadScenarios, type LoadedScenario } from "./loadScenarios.ts";

export const promise: Act = (files, options, host) => {
  const { loaded, code } = loadScenarios(files, options, host);
  const [first] = loaded;
  if (!first || code !== exitCode.done) return code;
  const order = readOrder(first, options);
  const name = runName(`${first.scenario.name}-promise`, callTexts(options), options.name?.trim());
  const folder = options.out ?? `reports/${name}`;
  const scenario = calledScenario(first.scenario, options);
  const issues = "code" in order ? [order] : folderIssues(folder, [scenario], options, host);
  printIssues(issues, host);
  if ("code" in order || issues.length > 0) return exitCodeOf(issues);
  return withLabor(options, host, async (labor, stages) => {
    const outcome = await conductOrder(order, labor, stages);
    if (outcome.kind === "refused") {
      printIssues(outcome.issues, host);
      return exitCodeOf(outcome.issues);
    }
    const study = { ...outcome.study, scenario };
    const isOpen = study.due !== null && study.due.verdict !== "yes";
    const levers = isOpen || options.levers === true ? await conductLevers(study, first.vary, labor, stages) : null;
    const tables = [...promiseTables(study), ...promiseLeversTables(study, levers)];
    const { units = "si" } = options;
    const answer = (): string => promiseAnswer({ study, levers, units }, host.width);
    printResult({ command: "promise", studies: [study], tables, answer }, options, host);
    const page = promisePage({
      version,
      study,
      levers,
      finding: promiseFinding(study),
      tables,
      warnings: first.issues,
      units,
    });
    await writeTables({ folder, name, tables, scenarios: [scenario], page }, options, host);
    return codeOf(study);
  });
};

function readOrder({ vary, scenario }: LoadedScenario, options: Options): ReturnType<typeof orderOf> {
  const chance = chanceOf(options);
  if (typeof chance !== "number") return chance;
  const replications = options.replications === undefined ? null : scenario.run.replications;
  return orderOf(vary, [], { chance, replications });
}

/** Another wanted chance is another run. */
function calledScenario(scenario: Scenario, { chance, name }: Options): Scenario {
  const { call } = scenario;
  const named = name === undefined ? scenario : { ...scenario, name: name.trim() };
  if (call === undefined || chance === undefined) return named;
  return { ...named, call: { ...call, options: [...call.options, `chance=${chance.trim()}`] } };
}

function codeOf({ due }: OrderStudy): number {
  return { yes: exitCode.done, no: exitCode.cannotWork, undecided: exitCode.undecided }[due?.verdict ?? "yes"];
}
