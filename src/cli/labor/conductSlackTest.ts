// Runs the paired replications of a slack test until it is finished.
import { beginSlackTest, concludeSlackTest, nextSlackRuns, withSlackAnswers } from "#analysis/bottleneck/slackTest.ts";
import type { Study } from "#analysis/study/study.ts";
import type { Labor } from "./labor.ts";
import type { Stages } from "./stages.ts";

export async function conductSlackTest(study: Study, labor: Labor, stages: Stages): Promise<Study> {
  const { scenario } = study;
  let test = beginSlackTest(study);
  for (let tasks = nextSlackRuns(test); tasks.length > 0; tasks = nextSlackRuns(test)) {
    test = withSlackAnswers(test, await labor.do({ kind: "replications", scenario, tasks }));
    stages.report(`${scenario.name}: ${tasks.length} runs to test the slack`);
  }
  return { ...study, slack: concludeSlackTest(test) };
}
