// Runs replications in the thread of the caller; a worker gives the same answers.
import type { Scenario } from "#scenario/scenario.ts";
import { runCell } from "#cell/run/runCell.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import { answerOf, isShown, isWhole, type ReplicationAnswer, type ReplicationTask } from "./replicationAnswer.ts";

export function replicationRunner(scenario: Scenario): (task: ReplicationTask) => ReplicationAnswer {
  return (task) => {
    const { replication, scale } = task;
    // A search tries each length once: its plan is not kept.
    const plan = scale?.longerBy === undefined ? planOf(scenario, scale) : planCell(scenario, scale);
    const options = {
      replication,
      keepsShots: isShown(task),
      watchesParisons: isWhole(task),
      readsQuarters: isWhole(task),
    };
    return answerOf(task, runCell(plan, options));
  };
}
