// Shares work among at most two workers; a job that is canceled leaves nothing waiting and gets no more replies.
import { openAsker, type Ask } from "./asker.ts";

/** A part of the page's work that can be dropped as a whole, such as all runs after one move of a slider. */
export interface Job {
  /** Waits for a free worker; the promise of a canceled job is never settled. Ask in small pieces, for a piece runs to its end. */
  readonly ask: Ask;
  cancel(): void;
}

export interface Pool {
  begin(): Job;
}

interface Waiting {
  readonly isCanceled: () => boolean;
  readonly send: (ask: Ask) => Promise<void>;
}

/** More would slow down a small machine, and the page has to stay responsive. */
const mostWorkers = 2;

/** `openWorker` is called when all workers are busy. */
export function openPool(first: Worker, openWorker: () => Worker): Pool {
  const free = [openAsker(first)];
  let workers = 1;
  let waiting: Waiting[] = [];
  const freeWorker = (): Ask | undefined => {
    if (free.length > 0 || workers === mostWorkers) return free.pop();
    workers += 1;
    return openAsker(openWorker());
  };
  const sendNext = (): void => {
    waiting = waiting.filter(({ isCanceled }) => !isCanceled());
    while (waiting.length > 0) {
      const worker = freeWorker();
      if (worker === undefined) return;
      void waiting
        .shift()!
        .send(worker)
        .then(() => {
          free.push(worker);
          sendNext();
        });
    }
  };
  return {
    begin() {
      let isCanceled = false;
      const ask: Ask = (question, given) =>
        new Promise((resolve, reject) => {
          const send = (worker: Ask): Promise<void> =>
            worker(question, given).then(
              (answer) => {
                if (!isCanceled) resolve(answer);
              },
              (fault: unknown) => {
                if (!isCanceled) reject(fault);
              },
            );
          waiting.push({ isCanceled: () => isCanceled, send });
          sendNext();
        });
      return {
        ask,
        cancel() {
          isCanceled = true;
        },
      };
    },
  };
}
