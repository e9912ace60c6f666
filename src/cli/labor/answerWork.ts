// One worker thread: does a task and returns its thread number.
import { threadId } from "node:worker_threads";
import { doWork, type AnswerTo, type Work } from "#analysis/replication/work.ts";

export interface WorkerReply {
  readonly answers: readonly AnswerTo<Work>[];
  readonly thread: number;
}

export function answerWork(work: Work): WorkerReply {
  return { answers: doWork(work), thread: threadId };
}
