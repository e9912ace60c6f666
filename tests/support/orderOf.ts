// Orders of a scenario text, run in this thread.
import { isFault } from "#foundation/fault.ts";
import type { Vary } from "#analysis/changes/levers.ts";
import { orderOf } from "#analysis/promise/orderCampaigns.ts";
import { runOrder } from "#analysis/promise/orderProcedure.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { shippedText } from "./reported.ts";

export const varied =
  (text: string, ...given: readonly string[]): Vary =>
  (more) =>
    readSettled(text, { name: "cell", file: "cell.yaml", set: [...given, ...more] }).scenario;

export function orderStudyOf(
  vary: Vary,
  settings: readonly string[] = [],
  replications: number | null = null,
): OrderStudy {
  const order = orderOf(vary, settings, { chance: 0.95, replications });
  if (isFault(order)) throw new Error(order.message);
  const outcome = runOrder(order);
  if (outcome.kind === "refused") throw new Error(JSON.stringify(outcome.issues));
  return outcome.study;
}

const due = "due: Monday 10:12";

/** Two colors in one morning: some runs are late because of stuck flash. */
export const morning = varied(
  shippedText("order-by-friday"),
  `orders=[{ quantity: 6000 parts, product: natural bottle, ${due} }, { quantity: 4000 parts, product: blue bottle, ${due} }]`,
);
