// Answers an order by the procedure of `promise`: rough after the first look, then until it is decided, then with each change.
import { conductLevers, wantsLevers } from "#analysis/promise/conductLevers.ts";
import { conductOrder, type RunTasks } from "#analysis/promise/conductOrder.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderAnswer } from "#analysis/promise/orderAnswer.ts";
import type { OrderLever } from "#analysis/promise/orderLevers.ts";
import { beginLevers, leverSizes, leversOfTrials } from "#analysis/promise/orderLeverRuns.ts";
import type { OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import { concludeOrder, effortOfRun } from "#analysis/promise/orderProcedure.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { piecesOf } from "#analysis/replication/work.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Ask } from "#page/answer/asker.ts";
import type { OrderAsked, OrderRunsAsked } from "#page/promise/openOrder.ts";
import type { Job, Pool } from "#page/answer/pool.ts";

export interface Progress {
  /** What is run: `the order`, or the change. */
  readonly what: string;
  readonly done: number;
  readonly of: number;
  /** At most; undefined until one piece is done. */
  readonly secondsLeft: number | undefined;
}

export interface Answered {
  readonly issues: readonly Issue[];
  /** Of the runs so far. */
  readonly study: OrderStudy | undefined;
  /** Whether no more runs of the order itself follow. */
  readonly isFinal: boolean;
  /** Those that are run; null where none is to be run. */
  readonly levers: OrderLevers | null;
  /** Undefined where nothing is run any more. */
  readonly progress: Progress | undefined;
  /** An error of the program. */
  readonly fault: string | undefined;
}

const reading: Progress = { what: "reading the scenario", done: 0, of: 1, secondsLeft: undefined };
export const begun: Answered = {
  issues: [],
  study: undefined,
  isFinal: false,
  levers: null,
  progress: reading,
  fault: undefined,
};

export interface OrderWish {
  readonly asked: OrderAsked;
  /** Whether the changes are run also where the order fits. */
  readonly levers: boolean;
}

/** `show` gets each state of the answer; none after the job is canceled. */
export function answerOrder(pool: Pool, wish: OrderWish, show: (answered: Answered) => void): Job {
  const job = pool.begin();
  let shown = begun;
  const update = (change: Partial<Answered>): void => show((shown = { ...shown, ...change }));
  update({});
  conduct(job.ask, wish, update).then(
    () => update({ progress: undefined }),
    (fault: unknown) => update({ progress: undefined, fault: String(fault) }),
  );
  return job;
}

type Update = (change: Partial<Answered>) => void;

async function conduct(ask: Ask, { asked, levers }: OrderWish, update: Update): Promise<void> {
  const { order, issues } = await ask("openOrder", asked);
  update({ issues });
  if (!order) return;
  const run = runInPieces(ask, ({ done, of }, secondsARun) =>
    update({ progress: { what: "the order", done, of, secondsLeft: (of - done) * secondsARun } }),
  );
  const outcome = await conductOrder(order, run, (state) => {
    const rough = concludeOrder(state);
    if (rough.kind === "found") update({ study: rough.study });
  });
  if (outcome.kind === "refused") return update({ study: undefined, issues: [...issues, ...outcome.issues] });
  const { study } = outcome;
  update({ study, isFinal: true });
  if (wantsLevers(study, levers))
    await conductChanges(ask, study, await ask("openOrderLevers", { asked, order }), update);
}

async function conductChanges(ask: Ask, study: OrderStudy, all: readonly OrderLever[], update: Update): Promise<void> {
  const levers = beginLevers(all).map(({ lever }) => lever);
  const most = leverSizes(study.order.chance)[1];
  let tried = 0;
  const run = runInPieces(ask, ({ done, of }, secondsARun) => {
    const what = `change ${tried + 1} of ${levers.length}, ${levers[tried]!.name}`;
    const secondsLeft = (most * (levers.length - tried) - done) * secondsARun;
    update({ progress: { what, done, of, secondsLeft } });
  });
  const found = await conductLevers(study, levers, run, (trials) => {
    tried = trials.length;
    update({ levers: leversOfTrials(study, trials) });
  });
  update({ levers: found });
}

/** Seconds of one piece of work: a change of the form waits so long at most. */
const pieceSeconds = 0.1;
const millisecondsOfSecond = 1000;

/** Milliseconds since the page was opened. */
const clock = (): number => Number(document.timeline.currentTime);

/** `seen` gets the runs of the order so far, and the seconds that one takes. */
function runInPieces(ask: Ask, seen: (runs: Pick<Progress, "done" | "of">, secondsARun: number) => void): RunTasks {
  return async (order: Order, tasks) => {
    const started = clock();
    const before = tasks[0]!.replication - 1;
    const size = Math.max(1, Math.floor(pieceSeconds / effortOfRun(order)));
    let done = 0;
    const answer = async (piece: OrderRunsAsked): Promise<readonly OrderAnswer[]> => {
      const answers = await ask("openOrderRuns", piece);
      done += answers.length;
      seen({ done: before + done, of: before + tasks.length }, (clock() - started) / millisecondsOfSecond / done);
      return answers;
    };
    return (await Promise.all(piecesOf({ order, tasks }, size).map(answer))).flat();
  };
}
