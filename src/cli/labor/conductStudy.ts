// Runs the replications that a study wants until it is finished.
import {
  beginStudy,
  concludeStudy,
  nextWanted,
  withAnswers,
  type StudyOutcome,
  type StudyState,
} from "#analysis/study/study.ts";
import {
  beginWarmUpSearch,
  pilotsWanted,
  settleWarmUp,
  type SettledScenario,
  type WarmUpSearch,
} from "#analysis/statistics/warmUpSearch.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Labor } from "./labor.ts";
import type { Stages } from "./stages.ts";

export async function conductWarmUp(scenario: Scenario, labor: Labor, stages: Stages): Promise<SettledScenario> {
  let search: WarmUpSearch = beginWarmUpSearch(scenario);
  for (let tasks = pilotsWanted(search); tasks.length > 0; tasks = pilotsWanted(search)) {
    const answers = await labor.do({ kind: "pilots", scenario, tasks });
    search = { ...search, answers: [...search.answers, ...answers] };
    stages.report(`${scenario.name}: ${tasks.length} trial runs to find the warm-up`);
  }
  const settled = settleWarmUp(search);
  const { warmup, length } = settled.scenario.run;
  if (scenario.run.warmup === "auto" && warmup !== "auto") {
    const cut = formatQuantity(warmup, "time", { digits: 3 });
    stages.report(
      `${scenario.name}: the first ${cut} of ${formatQuantity(length, "time", { digits: 3 })} are left out`,
    );
  }
  return settled;
}

export async function conductStudy(
  settled: SettledScenario,
  labor: Labor,
  stages: Stages,
  sensitivity?: StudyState["sensitivity"],
): Promise<StudyOutcome> {
  const { scenario, warnings } = settled;
  let state = beginStudy(scenario, sensitivity);
  for (let tasks = nextWanted(state); tasks.length > 0; tasks = nextWanted(state)) {
    state = withAnswers(state, await labor.do({ kind: "replications", scenario, tasks }));
    stages.report(`${scenario.name}: ${tasks.length} replications`);
  }
  return concludeStudy(state, warnings);
}
