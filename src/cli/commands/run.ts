// The command `run`: simulates one scenario, prints the answer and writes its tables.
import { bytesOfEvents, eventsTable, shotsTable } from "#report/tables/eventTables.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { runAnswer } from "#report/answers/runAnswer.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import type { Act } from "#cli/call/command.ts";
import { announceRun } from "#cli/labor/announce.ts";
import { withChanges } from "#cli/labor/conductChanges.ts";
import { conductSlackTest } from "#cli/labor/conductSlackTest.ts";
import { conductStudy, conductWarmUp } from "#cli/labor/conductStudy.ts";
import { exitCode, exitCodeOf } from "#cli/machine/exitCode.ts";
import { loadScenarios } from "./loadScenarios.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { printResult } from "#cli/output/printResult.ts";
import { reportedScenario } from "./reportedScenario.ts";
import { callTexts } from "#cli/call/options.ts";
import { runName } from "#cli/call/runName.ts";
import { folderIssues } from "#cli/output/earlierRun.ts";
import { version } from "#cli/machine/version.ts";
import { withLabor } from "#cli/labor/withLabor.ts";
import { writeTables } from "#cli/output/writeTables.ts";

export const run: Act = (files, options, host) => {
  const { loaded, code } = loadScenarios(files, options, host);
  const [first] = loaded;
  if (!first || code !== exitCode.done) return code;
  const name = options.name?.trim();
  const read = name === undefined ? first : { ...first, scenario: { ...first.scenario, name } };
  const nameOfRun = runName(first.scenario.name, callTexts(options), name);
  const folder = options.out ?? `reports/${nameOfRun}`;
  const inTheWay = folderIssues(folder, [read.scenario], options, host);
  printIssues(inTheWay, host);
  if (inTheWay.length > 0) return exitCodeOf(inTheWay);
  return withLabor(options, host, async (labor, stages) => {
    const settled = await conductWarmUp(read.scenario, labor, stages);
    const bytes = options.events === true ? bytesOfEvents(settled.scenario) : 0;
    announceRun(settled.scenario, options, bytes, { host, jobs: labor.jobs });
    const outcome = await conductStudy(settled, labor, stages, options.sensitivity);
    if (outcome.kind === "stuck") {
      printIssues([outcome.issue], host);
      return exitCodeOf([outcome.issue]);
    }
    const tested = options.slack ? await conductSlackTest(outcome.study, labor, stages) : outcome.study;
    const study = await withChanges(tested, read, options, { labor, stages });
    const { scenario } = study;
    const tables = studyTables([study]);
    printResult(
      { command: "run", studies: [study], tables, answer: () => runAnswer(study, host.width, options.units) },
      options,
      host,
    );
    const long = options.events === true ? [eventsTable(scenario), shotsTable(scenario)] : [];
    const { units = "si" } = options;
    const page = reportPage({ version, scenarios: [reportedScenario(study, read)], comparison: [], units });
    await writeTables(
      { folder, name: nameOfRun, tables: [...tables, ...long], scenarios: [scenario], page },
      options,
      host,
    );
    stages.report("files written");
    return study.precision?.reached === false ? exitCode.undecided : exitCode.done;
  });
};
