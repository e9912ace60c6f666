// One worker thread: does a task and returns its thread number.
import { threadId } from "node:worker_threads";
import { doWork, type AnswerTo, type Work } from "#analysis/replication/work.ts";
import { studyPoint, type PointOutcome } from "#analysis/study/sweepPoint.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** One whole point of a sweep. */
export interface PointWork {
  readonly kind: "point";
  readonly scenario: Scenario;
}

export interface WorkerReply {
  readonly answers: readonly (AnswerTo<Work> | PointOutcome)[];
  readonly thread: number;
}

export function answerWork(work: Work | PointWork): WorkerReply {
  return { answers: work.kind === "point" ? [studyPoint(work.scenario)] : doWork(work), thread: threadId };
}
