// Reads a lesson with its cells, runs them, and fills its texts from the records.
import type { Issue } from "#foundation/issue.ts";
import type { GivenLesson } from "#page/file/given.ts";
import { readLesson } from "#report/lessons/readLesson.ts";
import { solveLesson, type SolvedLesson } from "#report/lessons/solveLesson.ts";
import { runOnce } from "#report/lessons/spells.ts";
import { recordScene } from "#report/scene/recordScene.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";

export interface OpenedLesson {
  readonly solved: SolvedLesson;
  /** One a stage: what there is to watch, to the end of its chart. */
  readonly records: readonly SceneRecord[];
}

/** Undefined where there is any issue. */
export interface LessonOpening {
  readonly opened: OpenedLesson | undefined;
  readonly issues: readonly Issue[];
}

export function openLesson({ name, file, text, beside }: GivenLesson): LessonOpening {
  const readText = (other: string): string | undefined => (Object.hasOwn(beside, other) ? beside[other] : undefined);
  const { lesson, issues, toIssue } = readLesson(text, { name, file, readText });
  if (!lesson) return { opened: undefined, issues };
  const runs = new Map([...lesson.cells].map(([cell, scenario]) => [cell, runOnce(scenario)]));
  const { solved, findings } = solveLesson(lesson, runs);
  if (!solved) return { opened: undefined, issues: findings.map(toIssue) };
  const records = solved.stages.map(({ cell, from, until }) =>
    withoutPath(recordScene(lesson.cells.get(cell)!, { from: Math.floor(from), until })),
  );
  return { opened: { solved, records }, issues };
}

/** The critical path would show what comes next. */
function withoutPath(record: SceneRecord): SceneRecord {
  const [activity, seconds, before, tied] = [new Uint16Array(), new Float64Array(), new Int32Array(), new Uint8Array()];
  return { ...record, links: { activities: [], activity, seconds, before, tied } };
}
