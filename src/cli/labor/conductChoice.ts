// Runs the replications that a choice wants of each layout until it is finished.
import { beginChoice, tasksOf, withChoiceAnswers } from "#analysis/choice/choice.ts";
import type { ChoiceGoal, ChoiceState } from "#analysis/choice/choice.ts";
import { choiceWanted } from "#analysis/choice/wantedRuns.ts";
import type { Layout } from "#analysis/choice/layout.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import type { Labor } from "./labor.ts";
import type { Stages } from "./stages.ts";

/** Replication 1 of each layout, which shows the measures that all of them have. */
export async function conductTrials(layouts: readonly Layout[], labor: Labor): Promise<readonly ReplicationAnswer[]> {
  const works = layouts.map(({ scenario }) => ({ kind: "replications", scenario, tasks: tasksOf(0, 1) }) as const);
  return (await labor.doAll(works)).flat();
}

export async function conductChoice(
  layouts: readonly Layout[],
  trials: readonly ReplicationAnswer[],
  goal: ChoiceGoal,
  { labor, stages }: { readonly labor: Labor; readonly stages: Stages },
): Promise<ChoiceState> {
  let state = beginChoice(layouts, trials, goal);
  for (let wanted = choiceWanted(state); wanted.length > 0; wanted = choiceWanted(state)) {
    const works = wanted.map(({ index, tasks }) => {
      return { kind: "replications", scenario: layouts[index]!.scenario, tasks } as const;
    });
    const answers = await labor.doAll(works);
    wanted.forEach(({ index }, i) => (state = withChoiceAnswers(state, index, answers[i]!)));
    const count = wanted.reduce((sum, { tasks }) => sum + tasks.length, 0);
    stages.report(`${count} replications of ${wanted.length} layouts`);
  }
  return state;
}
