// Runs replications where the caller stands, one after the other; a worker does the same with the same answers.
import type { Scenario } from "#scenario/scenario.ts";
import { planCell, type CellPlan } from "#cell/planCell.ts";
import { runCell } from "#cell/runCell.ts";
import { answerOf, type ReplicationAnswer, type ReplicationTask } from "./replicationAnswer.ts";

/** A plan is made once for each variant of the cell and serves all of its replications. */
export function replicationRunner(scenario: Scenario): (task: ReplicationTask) => ReplicationAnswer {
  const plans = new Map<string, CellPlan>();
  return (task) => {
    const variant = JSON.stringify(task.scale);
    const plan = plans.get(variant) ?? planCell(scenario, task.scale ?? undefined);
    plans.set(variant, plan);
    return answerOf(
      task,
      runCell(plan, { replication: task.replication, keepsShots: false, watchesParisons: task.scale === null }),
    );
  };
}
