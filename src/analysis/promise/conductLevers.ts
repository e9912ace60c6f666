// Runs the order with each change that may make it fit.
import type { RunTasks } from "./conductOrder.ts";
import { beginLevers, leverRunsWanted, leversOfTrials, withLeverAnswers, type LeverTrial } from "./orderLeverRuns.ts";
import type { OrderLevers } from "./orderLeverStudy.ts";
import type { OrderLever } from "./orderLevers.ts";
import type { OrderStudy } from "./orderStudy.ts";

/** `seen` gets the changes so far, the last of them new. */
export async function conductLevers(
  base: OrderStudy,
  levers: readonly OrderLever[],
  run: RunTasks,
  seen: (trials: readonly LeverTrial[]) => void,
): Promise<OrderLevers> {
  const trials: LeverTrial[] = [];
  for (const begun of beginLevers(levers)) {
    let trial = begun;
    for (let tasks = leverRunsWanted(trial); tasks.length > 0; tasks = leverRunsWanted(trial)) {
      trial = withLeverAnswers(trial, await run(trial.lever.order, tasks));
    }
    trials.push(trial);
    seen(trials);
  }
  return leversOfTrials(base, trials);
}

/** Whether `promise` runs the changes: where the order does not fit, or when they are asked for. */
export function wantsLevers({ due }: OrderStudy, areAsked: boolean): boolean {
  return due !== null && (due.verdict !== "yes" || areAsked);
}
