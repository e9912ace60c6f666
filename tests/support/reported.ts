// Studies of shipped and invented scenarios, in the form that a report needs.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { comparableScenarios, compareStudies } from "#analysis/study/comparison.ts";
import { firstShots, leadingInCycle } from "#analysis/study/firstShots.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import type { ReportedScenario, ReportInput } from "#report/page/reported.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";

export function shippedText(name: string): string {
  return readFileSync(fileURLToPath(new URL(`../../scenarios/${name}.yaml`, import.meta.url)), "utf8");
}

/** A scenario with four replications of one hour. */
export function scenarioOf(
  text: string,
  name: string,
  set: readonly string[] = [],
  read: typeof readScenario = readScenario,
): Scenario {
  const brief = ["run.replications=4", "run.length=1 h", ...set];
  const { scenario, issues } = read(text, { name, file: `${name}.yaml`, set: brief });
  if (!scenario) throw new Error(JSON.stringify(issues));
  return scenario;
}

export function studyOf(scenario: Scenario): Study {
  const outcome = runStudy(scenario);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

export function reportedOf(scenario: Scenario, text = ""): ReportedScenario {
  const study = studyOf(scenario);
  return { study, shots: firstShots(study.scenario, leadingInCycle(study)), text, settings: [], issues: [] };
}

const reports = new Map<string, ReportInput>();

/** Files of tests that run in one process share each report. */
export function runReport(name: string, set: readonly string[] = []): ReportInput {
  const key = [name, ...set.toSorted()].join("\n");
  const text = shippedText(name);
  const report = reports.get(key) ?? {
    version: "0.0.0-test",
    scenarios: [reportedOf(scenarioOf(text, name, set, readSettled), text)],
    comparison: [],
  };
  reports.set(key, report);
  return report;
}

export function compareReport(names: readonly string[], set: readonly string[] = []): ReportInput {
  const scenarios = comparableScenarios(names.map((name) => scenarioOf(shippedText(name), name, set)));
  const reported = scenarios.map((scenario) => reportedOf(scenario, shippedText(scenario.name)));
  const [base, ...others] = reported.map(({ study }) => study);
  return { version: "0.0.0-test", scenarios: reported, comparison: base ? compareStudies(base, others) : [] };
}
