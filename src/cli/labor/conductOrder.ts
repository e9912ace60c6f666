// Runs an order as often as its decision needs.
import { impossibleIssues } from "#analysis/promise/impossibleOrder.ts";
import type { Order } from "#analysis/promise/order.ts";
import { beginOrder, concludeOrder, runsWanted, withOrderAnswers } from "#analysis/promise/orderProcedure.ts";
import type { OrderOutcome } from "#analysis/promise/orderStudy.ts";
import type { Labor } from "./labor.ts";
import type { Stages } from "./stages.ts";

export async function conductOrder(order: Order, labor: Labor, stages: Stages): Promise<OrderOutcome> {
  const issues = impossibleIssues(order);
  if (issues.length > 0) return { kind: "refused", issues };
  let state = beginOrder(order);
  for (let tasks = runsWanted(state); tasks.length > 0; tasks = runsWanted(state)) {
    state = withOrderAnswers(state, await labor.run(order, tasks));
    stages.report(`${order.name}: ${tasks.length} runs`);
  }
  return concludeOrder(state);
}
