// One worker thread: does a task and returns its thread number.
import { threadId } from "node:worker_threads";
import { doWork, type AnswerTo, type Work } from "#analysis/replication/work.ts";
import { studyPoint, type PointOutcome } from "#analysis/study/sweepPoint.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderAnswer, OrderTask } from "#analysis/promise/orderAnswer.ts";
import { orderRunner } from "#analysis/promise/runOrder.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** One whole point of a sweep. */
interface PointWork {
  readonly kind: "point";
  readonly scenario: Scenario;
}

/** Runs of an order. */
export interface OrderWork {
  readonly kind: "order";
  readonly order: Order;
  readonly tasks: readonly OrderTask[];
}

export type SentWork = Work | PointWork | OrderWork;

export interface Parcel {
  readonly work: SentWork;
  /** Of its scenario or order: the same number is the same one. */
  readonly number: number;
  /** In memory that all threads share: thousandths of a task that are done, at `place`. */
  readonly done?: { readonly thousandths: Int32Array; readonly place: number };
}

export interface WorkerReply {
  readonly answers: readonly (AnswerTo<Work> | PointOutcome | OrderAnswer)[];
  readonly thread: number;
}

export function answerWork({ work, number, done }: Parcel): WorkerReply {
  const report = (tasks: number): void => {
    if (done) done.thousandths[done.place] = Math.floor(1000 * tasks);
  };
  return { answers: answersTo(known(work, number), report), thread: threadId };
}

/** Their plans are kept as long as they are. */
const mostKnown = 4;
const scenarios = new Map<number, Scenario>();

/** With the scenario that came first under this number, since its plan is made. */
function known(work: SentWork, number: number): SentWork {
  if (work.kind === "order") return work;
  const scenario = scenarios.get(number) ?? work.scenario;
  // The one asked for last is forgotten last.
  scenarios.delete(number);
  scenarios.set(number, scenario);
  const [oldest] = scenarios.keys();
  if (scenarios.size > mostKnown && oldest !== undefined) scenarios.delete(oldest);
  return { ...work, scenario };
}

function answersTo(work: SentWork, report: (done: number) => void): WorkerReply["answers"] {
  if (work.kind === "point") return [studyPoint(work.scenario)];
  if (work.kind !== "order") return doWork(work, report);
  const run = orderRunner(work.order);
  return work.tasks.map((task, i) => {
    const answer = run(task);
    report(i + 1);
    return answer;
  });
}
