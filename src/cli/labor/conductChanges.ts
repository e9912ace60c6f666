// Runs the replications of the changed cells and adds to a study what one change buys.
import { concludeChanges } from "#analysis/changes/concludeChanges.ts";
import { concludeLost } from "#analysis/changes/concludeLost.ts";
import { beginChanges, changesWanted, withTrialAnswers } from "#analysis/changes/procedure.ts";
import type { Vary } from "#analysis/changes/levers.ts";
import type { Study } from "#analysis/study/study.ts";
import type { Options } from "#cli/call/command.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Labor } from "./labor.ts";
import type { Stages } from "./stages.ts";

interface Given {
  /** As the file and the call give it. */
  readonly scenario: Scenario;
  readonly vary: Vary;
}

export async function withChanges(
  study: Study,
  { scenario, vary }: Given,
  { changes = "few" }: Options,
  { labor, stages }: { readonly labor: Labor; readonly stages: Stages },
): Promise<Study> {
  if (changes === "off") return study;
  let state = beginChanges(study, vary, changes);
  stages.report(`${study.scenario.name}: ${state.trials.length} changes are read`);
  for (let wanted = changesWanted(state); wanted.length > 0; wanted = changesWanted(state)) {
    const works = wanted.map(({ trial, tasks }) => {
      return { kind: "replications", scenario: state.trials[trial]!.scenario, tasks } as const;
    });
    const answers = await labor.doAll(works);
    wanted.forEach(({ trial }, i) => (state = withTrialAnswers(state, trial, answers[i]!)));
    const count = wanted.reduce((sum, { tasks }) => sum + tasks.length, 0);
    stages.report(`${study.scenario.name}: ${count} replications of ${wanted.length} changes`);
  }
  const lost = concludeLost(state);
  return { ...study, changes: concludeChanges(state, scenario.run), ...(lost === null ? {} : { lost }) };
}
