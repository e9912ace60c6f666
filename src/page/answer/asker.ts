// Asks the worker, and gives each reply to the one who asked.
import type { Answers, Asked, Question, Replied } from "./answers.ts";

export type Ask = <Q extends Question>(
  question: Q,
  given: Parameters<Answers[Q]>[0],
) => Promise<ReturnType<Answers[Q]>>;

interface Waiting {
  readonly resolve: (answer: ReturnType<Answers[Question]>) => void;
  readonly reject: (fault: Error) => void;
}

export function openAsker(worker: Worker): Ask {
  const waiting = new Map<number, Waiting>();
  let asked = 0;
  worker.addEventListener("message", ({ data }: MessageEvent<Replied>) => {
    const one = waiting.get(data.id);
    waiting.delete(data.id);
    if ("fault" in data) one?.reject(new Error(data.fault));
    else one?.resolve(data.answer);
  });
  return (question, given) =>
    new Promise((resolve, reject) => {
      const id = asked++;
      waiting.set(id, { resolve: resolve as Waiting["resolve"], reject });
      worker.postMessage({ id, question, given } satisfies Asked<typeof question>);
    });
}
