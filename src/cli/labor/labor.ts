// Runs work in this thread or in worker threads, whichever is faster; the answers are the same.
import { doWork, effortOf, piecesOf, type AnswerTo, type Work } from "#analysis/replication/work.ts";
import { studyPoint, type PointOutcome } from "#analysis/study/sweepPoint.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Host } from "#cli/machine/host.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderAnswer, OrderTask } from "#analysis/promise/orderAnswer.ts";
import { effortOfRun } from "#analysis/promise/orderProcedure.ts";
import { orderRunner } from "#analysis/promise/runOrder.ts";
import type { OrderWork, PointWork, WorkerReply } from "./answerWork.ts";

export interface Labor {
  /** The answers in the order of the tasks. */
  do<W extends Work>(work: W): Promise<readonly AnswerTo<W>[]>;
  /** The same for several works at once, which share the threads and one bar. */
  doAll<W extends Work>(works: readonly W[]): Promise<readonly (readonly AnswerTo<W>[])[]>;
  /** Studies each scenario as a whole; `found` gets each outcome as soon as it is known, with the index of its scenario. */
  study(scenarios: readonly Scenario[], found: (outcome: PointOutcome, index: number) => void): Promise<void>;
  /** Runs of an order, in the order of the tasks. */
  run(order: Order, tasks: readonly OrderTask[]): Promise<readonly OrderAnswer[]>;
  /** How many tasks each worker thread has done. */
  readonly tally: ReadonlyMap<number, number>;
  end(): Promise<void>;
}

/** Below this computing time in seconds, starting workers costs more than they save. */
const worthSending = 1;
/** Seconds; a bar for shorter work would flicker. */
const worthShowing = 2;
/** Tasks a message: few enough to share evenly, many enough to pay for the message. */
const mostTasksAPiece = 50;

export function openLabor(jobs: number, host: Host): Labor {
  const tally = new Map<number, number>();
  let pool: Promise<WorkerPool> | undefined;
  /** In pieces, here or in workers; the answers to each work in the order of its tasks. */
  async function share<W extends Work | OrderWork, A extends WorkerReply["answers"][number]>(
    works: readonly W[],
    effort: number,
    here: (piece: W) => readonly A[],
  ): Promise<readonly (readonly A[])[]> {
    const count = works.reduce((sum, { tasks }) => sum + tasks.length, 0);
    const bar = effort > worthShowing ? await host.showProgress(count) : undefined;
    const isSent = jobs > 1 && count > 1 && effort > worthSending;
    if (isSent) pool ??= openPool(jobs);
    const sendTo = isSent ? await pool : undefined;
    const answer = async (piece: W): Promise<readonly A[]> => {
      const answers = sendTo ? await send<A>(sendTo, piece, tally) : here(piece);
      bar?.advance(piece.tasks.length);
      if (!sendTo) await host.breathe();
      return answers;
    };
    const size = sendTo ? Math.min(mostTasksAPiece, Math.ceil(count / (4 * jobs))) : 1;
    const answersOf = async (work: W): Promise<readonly A[]> => {
      const pieces = piecesOf(work, size);
      return (sendTo ? await Promise.all(pieces.map(answer)) : await inTurn(pieces, answer)).flat();
    };
    const answers = sendTo ? await Promise.all(works.map(answersOf)) : await inTurn(works, answersOf);
    bar?.end();
    return answers;
  }
  async function doAll<W extends Work>(works: readonly W[]): Promise<readonly (readonly AnswerTo<W>[])[]> {
    const effort = works.reduce((sum, work) => sum + effortOf(work), 0);
    return share(works, effort, (piece) => doWork(piece));
  }
  return {
    tally,
    doAll,
    do: async (work) => (await doAll([work]))[0] ?? [],
    async run(order, tasks) {
      const here = orderRunner(order);
      const work: OrderWork = { kind: "order", order, tasks };
      const effort = tasks.length * effortOfRun(order);
      return (await share([work], effort, (piece) => piece.tasks.map(here)))[0] ?? [];
    },
    async study(scenarios, found) {
      const [first] = scenarios;
      if (first === undefined) return;
      const bar = await host.showProgress(scenarios.length, "points");
      const isSent = jobs > 1 && scenarios.length > 1 && scenarios.length * effortOfStudy(first) > worthSending;
      if (isSent) pool ??= openPool(jobs);
      const sendTo = isSent ? await pool : undefined;
      const indexes = scenarios.keys();
      const studyNext = async (): Promise<void> => {
        // Each worker takes the next point when it is free.
        for (const index of indexes) {
          const scenario = scenarios[index]!;
          found(sendTo ? await sendPoint(sendTo, scenario, tally) : studyPoint(scenario), index);
          bar?.advance(1);
          if (!sendTo) await host.breathe();
        }
      };
      await Promise.all(Array.from({ length: isSent ? jobs : 1 }, studyNext));
      bar?.end();
    },
    async end() {
      await (await pool)?.destroy();
    },
  };
}

interface WorkerPool {
  run(work: Work | PointWork | OrderWork): Promise<WorkerReply>;
  destroy(): Promise<void>;
}

async function openPool(jobs: number): Promise<WorkerPool> {
  const { Piscina } = await import("piscina");
  return new Piscina<Work | PointWork | OrderWork, WorkerReply>({
    filename: new URL("worker.js", import.meta.url).href,
    // Another thread starts when all are busy, so there are never more than pieces of work.
    minThreads: 1,
    maxThreads: jobs,
  });
}

async function send<A>(pool: WorkerPool, piece: Work | OrderWork, tally: Map<number, number>): Promise<readonly A[]> {
  const { answers, thread } = await pool.run(piece);
  tally.set(thread, (tally.get(thread) ?? 0) + piece.tasks.length);
  return answers as readonly A[];
}

async function sendPoint(pool: WorkerPool, scenario: Scenario, tally: Map<number, number>): Promise<PointOutcome> {
  const { answers, thread } = await pool.run({ kind: "point", scenario });
  tally.set(thread, (tally.get(thread) ?? 0) + 1);
  return answers[0] as PointOutcome;
}

function effortOfStudy(scenario: Scenario): number {
  const tasks = Array.from({ length: scenario.run.replications }, (_, i) => ({ replication: i + 1, scale: null }));
  return effortOf({ kind: "replications", scenario, tasks });
}

async function inTurn<P, A>(pieces: readonly P[], act: (piece: P) => Promise<A>): Promise<A[]> {
  const answers: A[] = [];
  for (const piece of pieces) answers.push(await act(piece));
  return answers;
}
