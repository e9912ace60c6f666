// Runs the order with each change that may make it fit.
import {
  beginLevers,
  leverRunsWanted,
  leversOfTrials,
  withLeverAnswers,
  type LeverTrial,
} from "#analysis/promise/orderLeverRuns.ts";
import type { OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import { orderLevers } from "#analysis/promise/orderLevers.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import type { Vary } from "#analysis/changes/levers.ts";
import type { Labor } from "./labor.ts";
import type { Stages } from "./stages.ts";

/** Null without a due date. */
export async function conductLevers(
  base: OrderStudy,
  vary: Vary,
  labor: Labor,
  stages: Stages,
): Promise<OrderLevers | null> {
  if (base.due === null) return null;
  const trials: LeverTrial[] = [];
  for (const begun of beginLevers(orderLevers(vary, base.order))) {
    let trial = begun;
    for (let tasks = leverRunsWanted(trial); tasks.length > 0; tasks = leverRunsWanted(trial)) {
      trial = withLeverAnswers(trial, await labor.run(trial.lever.order, tasks));
    }
    stages.report(`${trial.lever.name}: ${trial.state.answers.length} runs`);
    trials.push(trial);
  }
  return leversOfTrials(base, trials);
}
