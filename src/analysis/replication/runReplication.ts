// Runs replications in the thread of the caller; a worker gives the same answers.
import type { Scenario } from "#scenario/scenario.ts";
import { runCell } from "#cell/run/runCell.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import { withFrequentStop } from "./frequentStop.ts";
import { answerOf, isShown, isWhole, type ReplicationAnswer, type ReplicationTask } from "./replicationAnswer.ts";

/** `report` gets on the way the share of the present replication that is done. */
export function replicationRunner(
  scenario: Scenario,
  report?: (share: number) => void,
): (task: ReplicationTask) => ReplicationAnswer {
  return (task) => {
    const { replication, scale, frequent } = task;
    const cell = frequent === undefined ? scenario : withFrequentStop(scenario, frequent);
    // A search tries each length once: its plan is not kept.
    const plan = scale?.longerBy === undefined ? planOf(cell, scale) : planCell(cell, scale);
    const record = runCell(plan, {
      replication,
      keepsShots: false,
      countsCycles: isShown(task),
      watchesParisons: isWhole(task),
      ...(report ? { report } : {}),
      quarters: isShown(task) ? "first" : isWhole(task) ? "days" : "none",
    });
    return answerOf(task, record);
  };
}
