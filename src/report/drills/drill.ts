// What a drill shows: charts of a run up to a moment, and an exercise whose key the record holds.
import type { Exercise } from "#report/lessons/exercise.ts";
import type { CellRun } from "#report/lessons/spells.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface DrillChart {
  readonly title: string;
  readonly run: CellRun;
  /** Seconds of the run: where the chart begins, where it ends before the choice, and where after it. */
  readonly from: number;
  readonly at: number;
  readonly until: number;
}

export interface Drill {
  readonly look: string;
  /** Empty where the answer needs none. */
  readonly charts: readonly DrillChart[];
  readonly exercise: Exercise;
}

/** Reads a shipped scenario with settings as `--set` takes them. */
export type ReadCell = (file: string, set?: readonly string[]) => Scenario;

/** Several drills of one kind, in the order of the record. */
export interface DrillKind {
  readonly name: string;
  readonly title: string;
  readonly make: (read: ReadCell) => readonly Drill[];
}
