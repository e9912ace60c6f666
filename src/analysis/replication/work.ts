// Work as plain tasks with plain answers, the same in this thread, in a worker or in a page.
import type { Scenario } from "#scenario/scenario.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { slowestTurn } from "#cell/layers/planCell.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import type { ReplicationAnswer, ReplicationTask } from "./replicationAnswer.ts";
import { replicationRunner } from "./runReplication.ts";
import { runPilot, type PilotAnswer, type PilotTask } from "#analysis/statistics/warmUpSearch.ts";

export type Work =
  | { readonly kind: "pilots"; readonly scenario: Scenario; readonly tasks: readonly PilotTask[] }
  | { readonly kind: "replications"; readonly scenario: Scenario; readonly tasks: readonly ReplicationTask[] };

export type AnswerTo<W extends Work> = W extends { readonly kind: "pilots" } ? PilotAnswer : ReplicationAnswer;

/** Gets on the way how many tasks are done, the part of the present one included. */
export type Report = (done: number) => void;

export function doWork<W extends Work>(work: W, report?: Report): readonly AnswerTo<W>[];
export function doWork(work: Work, report?: Report): readonly (PilotAnswer | ReplicationAnswer)[] {
  let done = 0;
  const within = report && ((share: number): void => report(done + share));
  const run = replicationRunner(work.scenario, within);
  const count = <Answer>(answer: Answer): Answer => {
    done += 1;
    report?.(done);
    return answer;
  };
  if (work.kind === "pilots") return work.tasks.map((task) => count(runPilot(work.scenario, task)));
  return work.tasks.map((task) => count(run(task)));
}

/** The same work in pieces of `size` tasks; the answers of the pieces in order are the answers to the whole. */
export function piecesOf<W extends { readonly tasks: readonly unknown[] }>(work: W, size: number): readonly W[] {
  const count = Math.ceil(work.tasks.length / size);
  return Array.from({ length: count }, (_, i) => ({ ...work, tasks: work.tasks.slice(i * size, (i + 1) * size) }));
}

/** Approximate seconds of computing per shot. */
const secondsPerShot = 2e-6;

/** Approximate seconds of this work, to decide whether workers save time. */
export function effortOf(work: Work): number {
  const { scenario, tasks } = work;
  const turn = slowestTurn(planOf(scenario)) / TICKS_PER_SECOND;
  const simulated = tasks.reduce((sum, task) => sum + ("length" in task ? task.length : scenario.run.length), 0);
  return (simulated / Math.max(turn, 1e-6)) * scenario.stations.length * secondsPerShot;
}
