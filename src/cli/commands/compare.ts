// The command `compare`: simulates scenarios with common random numbers and compares each with the first.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { pairsAgainst } from "#analysis/study/against.ts";
import { comparableScenarios, comparePairs, overOneSpan, type Comparison } from "#analysis/study/comparison.ts";
import { paybacks } from "#analysis/study/payback.ts";
import type { Study } from "#analysis/study/study.ts";
import type { SettledScenario } from "#analysis/statistics/warmUpSearch.ts";
import { compareAnswer } from "#report/answers/compareAnswer.ts";
import { comparisonTable } from "#report/tables/comparisonTable.ts";
import { paybackTables } from "#report/tables/paybackTable.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Act, Options } from "#cli/call/command.ts";
import { conductComparison } from "#cli/labor/conductComparison.ts";
import { conductWarmUp } from "#cli/labor/conductStudy.ts";
import { exitCode, exitCodeOf } from "#cli/machine/exitCode.ts";
import { layoutIssues } from "./layoutIssues.ts";
import { loadScenarios, type LoadedScenario } from "./loadScenarios.ts";
import type { Host } from "#cli/machine/host.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { printResult } from "#cli/output/printResult.ts";
import { reportedScenario } from "./reportedScenario.ts";
import { callTexts } from "#cli/call/options.ts";
import { runName } from "#cli/call/runName.ts";
import { folderIssues } from "#cli/output/earlierRun.ts";
import { version } from "#cli/machine/version.ts";
import { withLabor } from "#cli/labor/withLabor.ts";
import { writeTables } from "#cli/output/writeTables.ts";

export const compareIssueCodes = {
  "compare-one": [
    "there is only one scenario to compare",
    "Name two scenario files or more, the base first, or add a --variant.",
  ],
  "same-name": ["two scenarios that are compared have one name", "Rename one of the files or variants."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export const compare: Act = (files, options, host) => {
  const { loaded, code } = loadScenarios(files, options, host);
  const scenarios = loaded.map(({ scenario }) => scenario);
  const wrongNames = code === exitCode.done ? [...sameNames(scenarios), ...layoutIssues(scenarios, options)] : [];
  printIssues(wrongNames, host);
  if (code !== exitCode.done || wrongNames.length > 0) return Math.max(code, exitCodeOf(wrongNames));
  const inTheWay = folderIssues(folderOf(scenarios, options), scenarios, options, host);
  printIssues(inTheWay, host);
  if (inTheWay.length > 0) return exitCodeOf(inTheWay);
  return withLabor(options, host, async (labor, stages) => {
    const settled: SettledScenario[] = [];
    for (const scenario of comparableScenarios(scenarios)) settled.push(await conductWarmUp(scenario, labor, stages));
    const outcomes = await conductComparison(overOneSpan(settled), labor, stages, options.against);
    const stuck = outcomes.flatMap((outcome) => (outcome.kind === "stuck" ? [outcome.issue] : []));
    printIssues(stuck, host);
    if (stuck.length > 0) return exitCodeOf(stuck);
    return reportComparison(
      loaded,
      outcomes.flatMap((outcome) => (outcome.kind === "found" ? [outcome.study] : [])),
      options,
      host,
    );
  });
};

async function reportComparison(
  loaded: readonly LoadedScenario[],
  studies: readonly Study[],
  options: Options,
  host: Host,
): Promise<number> {
  const pairs = pairsAgainst(studies, options.against);
  const comparison: Comparison = { studies, rows: comparePairs(pairs), paybacks: paybacks(pairs) };
  const tables = [...studyTables(studies), comparisonTable(comparison.rows), ...paybackTables(comparison.paybacks)];
  const scenarios = studies.map(({ scenario }) => scenario);
  printResult(
    { command: "compare", studies, tables, answer: () => compareAnswer(comparison, host.width, options.units) },
    options,
    host,
  );
  const reported = studies.map((study, i) => reportedScenario(study, loaded[i]!));
  const page = reportPage({
    version,
    scenarios: reported,
    comparison: comparison.rows,
    paybacks: comparison.paybacks,
    units: options.units ?? "si",
  });
  await writeTables(
    { folder: folderOf(scenarios, options), name: nameOf(scenarios, options), tables, scenarios, page },
    options,
    host,
  );
  return studies.some(({ precision }) => precision?.reached === false) ? exitCode.undecided : exitCode.done;
}

/** More names would make the name of the folder too long. */
const mostNamed = 3;

/** `one-station-against-two-station`, the base first. */
function nameOf(scenarios: readonly Scenario[], options: Options): string {
  const [base, ...others] = scenarios.map(({ name }) => name.replaceAll(/[\s;:,]+/gu, "-"));
  const against = others.length > mostNamed ? [`${others.length}-layouts`] : others;
  return runName([base, "against", ...against].join("-"), callTexts(options), options.name?.trim());
}

function folderOf(scenarios: readonly Scenario[], options: Options): string {
  return options.out ?? `reports/${nameOf(scenarios, options)}`;
}

/** Rows of two scenarios of one name could not be distinguished. */
function sameNames(scenarios: readonly Scenario[]): readonly Issue[] {
  const names = scenarios.map(({ name }) => name);
  const twice = new Set(names.filter((name, i) => names.indexOf(name) !== i));
  const fewer: readonly Issue[] =
    names.length > 1
      ? []
      : [
          issueOf(
            "compare-one",
            "there is only one scenario to compare",
            "Name two scenario files or more, the base first, or add a --variant.",
          ),
        ];
  return [
    ...fewer,
    ...[...twice].map((name) =>
      issueOf(
        "same-name",
        `two scenarios are called ${name}`,
        "Rename one of them: a scenario is called as its file, a variant by the name before its colon.",
      ),
    ),
  ];
}

function issueOf(code: string, message: string, remedy: string): Issue {
  return { code, severity: "error", path: "", message, remedy, fate: "file" };
}
