// One worker thread: does a task and returns its thread number.
import { threadId } from "node:worker_threads";
import { doWork, type AnswerTo, type Work } from "#analysis/replication/work.ts";
import { studyPoint, type PointOutcome } from "#analysis/study/sweepPoint.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderAnswer, OrderTask } from "#analysis/promise/orderAnswer.ts";
import { orderRunner } from "#analysis/promise/runOrder.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** One whole point of a sweep. */
export interface PointWork {
  readonly kind: "point";
  readonly scenario: Scenario;
}

/** Runs of an order. */
export interface OrderWork {
  readonly kind: "order";
  readonly order: Order;
  readonly tasks: readonly OrderTask[];
}

export interface WorkerReply {
  readonly answers: readonly (AnswerTo<Work> | PointOutcome | OrderAnswer)[];
  readonly thread: number;
}

export function answerWork(work: Work | PointWork | OrderWork): WorkerReply {
  return { answers: answersTo(work), thread: threadId };
}

function answersTo(work: Work | PointWork | OrderWork): WorkerReply["answers"] {
  if (work.kind === "point") return [studyPoint(work.scenario)];
  return work.kind === "order" ? work.tasks.map(orderRunner(work.order)) : doWork(work);
}
