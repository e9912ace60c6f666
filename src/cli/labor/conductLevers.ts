// Runs an order with each change that may make it fit, with the same random numbers.
import type { Vary } from "#analysis/changes/levers.ts";
import { concludeLevers, type ChangedOrder, type OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import { orderLevers } from "#analysis/promise/orderLevers.ts";
import { runsOfLever } from "#analysis/promise/orderProcedure.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { conductOrder } from "./conductOrder.ts";
import type { Labor } from "./labor.ts";
import type { Stages } from "./stages.ts";

/** A change with which the order can never be done is left out. */
export async function conductLevers(base: OrderStudy, vary: Vary, labor: Labor, stages: Stages): Promise<OrderLevers> {
  const { order } = base;
  const found = orderLevers(vary, order, { chance: order.chance, replications: null });
  const replications = runsOfLever(base, found.length);
  const changed: ChangedOrder[] = [];
  for (const lever of found) {
    const outcome = await conductOrder({ ...lever.order, replications }, labor, stages);
    if (outcome.kind === "found") changed.push({ lever, study: outcome.study });
  }
  return concludeLevers(base, changed);
}
