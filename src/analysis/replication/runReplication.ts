// Runs replications in the thread of the caller; a worker gives the same answers.
import type { Scenario } from "#scenario/scenario.ts";
import { runCell } from "#cell/run/runCell.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import { withFrequentStop } from "./frequentStop.ts";
import { answerOf, isShown, type ReplicationAnswer, type ReplicationTask } from "./replicationAnswer.ts";

export function replicationRunner(scenario: Scenario): (task: ReplicationTask) => ReplicationAnswer {
  return (task) => {
    const { replication, scale, frequent } = task;
    const isAsItIs = scale === null && frequent === undefined;
    const cell = frequent === undefined ? scenario : withFrequentStop(scenario, frequent);
    const options = {
      replication,
      keepsShots: isShown(task),
      watchesParisons: isAsItIs,
      readsQuarters: isAsItIs,
    };
    return answerOf(task, runCell(planOf(cell, scale), options));
  };
}
