// Runs replications in the thread of the caller; a worker gives the same answers.
import type { Scenario } from "#scenario/scenario.ts";
import { runCell } from "#cell/run/runCell.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import { answerOf, isShown, isWhole, type ReplicationAnswer, type ReplicationTask } from "./replicationAnswer.ts";

export function replicationRunner(scenario: Scenario): (task: ReplicationTask) => ReplicationAnswer {
  return (task) => {
    const { replication, scale } = task;
    const options = {
      replication,
      keepsShots: isShown(task),
      watchesParisons: isWhole(task),
      readsQuarters: isWhole(task),
    };
    return answerOf(task, runCell(planOf(scenario, scale), options));
  };
}
