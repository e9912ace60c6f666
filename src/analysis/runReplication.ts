// Runs replications where the caller stands, one after the other; a worker does the same with the same answers.
import type { Scenario } from "#scenario/scenario.ts";
import { runCell } from "#cell/runCell.ts";
import { planOf } from "./planOf.ts";
import { answerOf, isShown, type ReplicationAnswer, type ReplicationTask } from "./replicationAnswer.ts";

export function replicationRunner(scenario: Scenario): (task: ReplicationTask) => ReplicationAnswer {
  return (task) => {
    const plan = planOf(scenario, task.scale);
    return answerOf(task, runCell(plan, { replication: task.replication, keepsShots: isShown(task) }));
  };
}
