// Independent experiments on a cell with rare stops: how often the interval of good parts an hour contains the true mean.
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { controlTasks, StopControl } from "#analysis/study/stopControl.ts";
import { measureOf, summarizeMeasures } from "#analysis/study/summarizeMeasures.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface Experiment {
  readonly plain: { readonly mean: number; readonly halfWidth: number };
  readonly controlled: { readonly mean: number; readonly halfWidth: number };
}

export function experimentOf(scenario: Scenario, measure = "good parts per hour"): Experiment {
  const run = replicationRunner(scenario);
  const answers = Array.from({ length: scenario.run.replications }, (_, i) => run({ replication: i + 1, scale: null }));
  const made = controlTasks(scenario, answers).map((task): [ReplicationTask, ReplicationAnswer] => [task, run(task)]);
  const control = new StopControl(scenario, answers, (frequent) =>
    made.flatMap(([task, answer]) => (task.frequent === frequent ? [answer] : [])),
  );
  const summary = measureOf(summarizeMeasures(answers), CELL, measure)!;
  const { mean, halfWidth } = control.apply(summary).interval;
  const plain = meanInterval(summary.values.filter((value) => value !== null));
  return {
    plain: { mean: plain.mean, halfWidth: plain.halfWidth! },
    controlled: { mean, halfWidth: halfWidth! },
  };
}

/** Each experiment has random numbers of its own. */
export function experiments(scenario: Scenario, count: number): readonly Experiment[] {
  return Array.from({ length: count }, (_, i) =>
    experimentOf({ ...scenario, run: { ...scenario.run, seed: `experiment ${i + 1}` } }),
  );
}

/** Share of the intervals that contain the true mean. */
export function coverage(truth: number, intervals: readonly Experiment["plain"][]): number {
  return intervals.filter(({ mean, halfWidth }) => Math.abs(mean - truth) <= halfWidth).length / intervals.length;
}
