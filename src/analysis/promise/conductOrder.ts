// Runs an order as often as its decision needs.
import { impossibleIssues } from "./impossibleOrder.ts";
import type { Order } from "./order.ts";
import type { OrderAnswer, OrderTask } from "./orderAnswer.ts";
import { beginOrder, concludeOrder, runsWanted, withOrderAnswers, type OrderState } from "./orderProcedure.ts";
import type { OrderOutcome } from "./orderStudy.ts";

/** The answers in the order of the tasks. */
export type RunTasks = (order: Order, tasks: readonly OrderTask[]) => Promise<readonly OrderAnswer[]>;

/** `seen` gets the runs so far after each look, and how many of them are new. */
export async function conductOrder(
  order: Order,
  run: RunTasks,
  seen: (state: OrderState, count: number) => void,
): Promise<OrderOutcome> {
  const issues = impossibleIssues(order);
  if (issues.length > 0) return { kind: "refused", issues };
  let state = beginOrder(order);
  for (let tasks = runsWanted(state); tasks.length > 0; tasks = runsWanted(state)) {
    state = withOrderAnswers(state, await run(order, tasks));
    seen(state, tasks.length);
  }
  return concludeOrder(state);
}
