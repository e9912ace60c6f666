// What one change of a scenario text buys, and hard cells on which it is not easy to see.
import type { Changes } from "#analysis/changes/changes.ts";
import { runChanges } from "#analysis/changes/runChanges.ts";
import type { ChangesDepth } from "#analysis/changes/effort.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import type { Scenario } from "#scenario/scenario.ts";

export function scenarioFrom(text: string, ...set: readonly string[]): Scenario {
  const { scenario, issues } = readSettled(text, { name: "cell", file: "cell.yaml", set });
  if (scenario === undefined) throw new Error(JSON.stringify(issues, undefined, 2));
  return scenario;
}

export function studyFrom(scenario: Scenario): Study {
  const outcome = runStudy(scenario);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

/** With further settings of the call, as a user gives them. */
export function changesOf(text: string, set: readonly string[] = [], depth: ChangesDepth = "few"): Changes {
  return resultsOf(text, set, depth).changes;
}

/** What one change buys and the lost parts, beside the study of the cell; of the settings only those that `takes` holds for. */
export function resultsOf(
  text: string,
  set: readonly string[] = [],
  depth: ChangesDepth = "few",
  takes: (setting: string) => boolean = () => true,
): ReturnType<typeof runChanges> & { readonly study: Study } {
  const given = scenarioFrom(text, ...set);
  const vary = (more: readonly string[]): Scenario | undefined =>
    more.every(takes)
      ? readSettled(text, { name: "cell", file: "cell.yaml", set: [...set, ...more] }).scenario
      : undefined;
  const study = studyFrom(given);
  return { study, ...runChanges(study, given, vary, depth) };
}
