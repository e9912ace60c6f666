// The answer to the order that is asked for, as far as it is known.
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Job, Pool } from "#page/answer/pool.ts";
import type { OrderAsked } from "#page/promise/openOrder.ts";
import type { OrderAnswerProps } from "./orderAnswerView.ts";
import { answerOrder, begun, type Answered } from "./orderWork.ts";

export interface Answering extends Omit<OrderAnswerProps, "place"> {
  /** The answer, or the one before until the first runs are made, so that the page does not jump. */
  readonly shown: Pick<Answered, "study" | "levers">;
}

/** Each other question cancels what is under way. */
export function useAnswer(pool: Pool, asked: OrderAsked, levers: boolean): Answering {
  const answered = useSignal(begun);
  const shown = useSignal<Answering["shown"]>(begun);
  const isStopped = useSignal(false);
  const job = useRef<Job | undefined>(undefined);
  const start = (): void => {
    isStopped.value = false;
    job.current = answerOrder(pool, { asked, levers }, (next) => {
      answered.value = next;
      if (next.study !== undefined || next.progress === undefined) shown.value = next;
    });
  };
  useEffect(() => {
    start();
    return () => job.current?.cancel();
  }, [JSON.stringify([asked, levers])]);
  const stop = (): void => {
    job.current?.cancel();
    isStopped.value = true;
    answered.value = { ...answered.value, progress: undefined };
    shown.value = answered.value;
  };
  return { answered: answered.value, shown: shown.value, isStopped: isStopped.value, stop, goOn: start };
}
