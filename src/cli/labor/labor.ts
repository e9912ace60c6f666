// Runs work in this thread or in worker threads, whichever is faster; the answers are the same.
import { doWork, effortOf, piecesOf, type AnswerTo, type Work } from "#analysis/replication/work.ts";
import type { Host } from "#cli/machine/host.ts";
import type { WorkerReply } from "./answerWork.ts";

export interface Labor {
  /** The answers in the order of the tasks. */
  do<W extends Work>(work: W): Promise<readonly AnswerTo<W>[]>;
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
  return {
    tally,
    async do(work) {
      const effort = effortOf(work);
      const size = Math.min(mostTasksAPiece, Math.ceil(work.tasks.length / (4 * jobs)));
      const bar = effort > worthShowing ? await host.showProgress(work.tasks.length) : undefined;
      const isSent = jobs > 1 && work.tasks.length > 1 && effort > worthSending;
      if (isSent) pool ??= openPool(jobs);
      const sendTo = isSent ? await pool : undefined;
      const answer = async (piece: typeof work): Promise<readonly AnswerTo<typeof work>[]> => {
        const answers = sendTo ? await send(sendTo, piece, tally) : doWork(piece);
        bar?.advance(piece.tasks.length);
        if (!sendTo) await host.breathe();
        return answers;
      };
      const answers = sendTo
        ? await Promise.all(piecesOf(work, size).map(answer))
        : await inTurn(piecesOf(work, 1), answer);
      bar?.end();
      return answers.flat();
    },
    async end() {
      await (await pool)?.destroy();
    },
  };
}

interface WorkerPool {
  run(work: Work): Promise<WorkerReply>;
  destroy(): Promise<void>;
}

async function openPool(jobs: number): Promise<WorkerPool> {
  const { Piscina } = await import("piscina");
  return new Piscina<Work, WorkerReply>({
    filename: new URL("worker.js", import.meta.url).href,
    minThreads: jobs,
    maxThreads: jobs,
  });
}

async function send<W extends Work>(
  pool: WorkerPool,
  piece: W,
  tally: Map<number, number>,
): Promise<readonly AnswerTo<W>[]> {
  const { answers, thread } = await pool.run(piece);
  tally.set(thread, (tally.get(thread) ?? 0) + piece.tasks.length);
  return answers as readonly AnswerTo<W>[];
}

async function inTurn<P, A>(pieces: readonly P[], act: (piece: P) => Promise<A>): Promise<A[]> {
  const answers: A[] = [];
  for (const piece of pieces) answers.push(await act(piece));
  return answers;
}
