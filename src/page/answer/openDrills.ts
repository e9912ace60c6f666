// Makes the drills of one kind, with the charts to show before and after the choice.
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import { invariant } from "#foundation/invariant.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { DrillChart, ReadCell } from "#report/drills/drill.ts";
import { drillKinds } from "#report/drills/drillKinds.ts";
import type { Exercise } from "#report/lessons/exercise.ts";
import { recordScene } from "#report/scene/recordScene.ts";
import { timelineOf } from "#report/scene/timelineOf.ts";

export interface ShownChart {
  readonly title: string;
  /** What is seen before the choice, and after it. */
  readonly before: TimelineRecord;
  readonly after: TimelineRecord;
}

export interface ShownDrill {
  readonly look: string;
  readonly charts: readonly ShownChart[];
  readonly exercise: Exercise;
}

export interface DrillsAsked {
  /** Name of the kind. */
  readonly kind: string;
  /** Texts of the scenarios of drills, by file. */
  readonly cells: Readonly<Record<string, string>>;
}

export function openDrills({ kind, cells }: DrillsAsked): readonly ShownDrill[] {
  const read: ReadCell = (file, set = []) => {
    const { scenario, issues } = readSettled(cells[file] ?? "", { name: file, file, set });
    invariant(scenario !== undefined, "the cells of the drills can be run", { file, issues: issues.length });
    return scenario;
  };
  const found = drillKinds.find(({ name }) => name === kind);
  const drills = found?.make(read) ?? [];
  return drills.map(({ look, charts, exercise }) => ({ look, charts: charts.map(shownChart), exercise }));
}

/** The critical path would show what comes next. */
function shownChart({ title, run, from: wanted, at, until }: DrillChart): ShownChart {
  // The axis begins at a whole second.
  const from = Math.floor(wanted);
  const record = recordScene(run.scenario, { from, until });
  const timeline = (end: number): TimelineRecord => ({ ...timelineOf(record, from, end), chain: [] });
  return { title, before: timeline(at), after: timeline(until) };
}
