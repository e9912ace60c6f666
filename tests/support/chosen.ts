// Makes a choice in this thread, as the command does with its workers.
import { beginChoice, tasksOf, withChoiceAnswers, type ChoiceGoal } from "#analysis/choice/choice.ts";
import type { Choice } from "#analysis/choice/choiceResult.ts";
import { concludeChoice } from "#analysis/choice/concludeChoice.ts";
import type { Criterion } from "#analysis/choice/criterion.ts";
import { layoutOf } from "#analysis/choice/layout.ts";
import { choiceWanted } from "#analysis/choice/wantedRuns.ts";
import { doWork } from "#analysis/replication/work.ts";
import type { Scenario } from "#scenario/scenario.ts";

export const goodParts: Criterion = { resource: "cell", measure: "good parts per hour", unit: "1/h", better: "more" };

export const usualGoal: ChoiceGoal = {
  criterion: goodParts,
  worthwhile: { by: "share", value: 0.01 },
  confidence: 0.95,
  need: null,
  mostReplications: 2000,
};

/** `most`: tasks that one step makes at most; the rest of them is asked for again. */
export function chosen(scenarios: readonly Scenario[], goal: ChoiceGoal = usualGoal, most = Infinity): Choice {
  const layouts = scenarios.map((scenario) => layoutOf(scenario, []));
  const trials = scenarios.flatMap((scenario) => doWork({ kind: "replications", scenario, tasks: tasksOf(0, 1) }));
  let state = beginChoice(layouts, trials, goal);
  for (let wanted = choiceWanted(state); wanted.length > 0; wanted = choiceWanted(state)) {
    for (const { index, tasks } of wanted) {
      const work = { kind: "replications", scenario: scenarios[index]!, tasks: tasks.slice(0, most) } as const;
      state = withChoiceAnswers(state, index, doWork(work));
    }
  }
  return concludeChoice(state);
}
