// Runs work in this thread or in worker threads, whichever is faster; the answers are the same.
import { doWork, effortOf, type AnswerTo, type Work } from "#analysis/replication/work.ts";
import { studyPoint, type PointOutcome } from "#analysis/study/sweepPoint.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Host, Progress } from "#cli/machine/host.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderAnswer, OrderTask } from "#analysis/promise/orderAnswer.ts";
import { effortOfRun } from "#analysis/promise/orderProcedure.ts";
import { orderRunner } from "#analysis/promise/runOrder.ts";
import type { OrderWork, WorkerReply } from "./answerWork.ts";
import { Pace } from "./pace.ts";
import { longestFirst, type Piece } from "./pieces.ts";
import { SharedNames } from "./sharedNames.ts";
import { Workers } from "./workers.ts";

export interface Labor {
  /** Worker threads that may be used. */
  readonly jobs: number;
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

/**
 * Below this computing time in seconds, starting workers costs more than they save; those that run cost only the way to them. A
 * worker with a single long task leaves this thread free for interrupts and the bar.
 */
const worthStarting = 1;
const longSingle = 4;
const worthSending = 0.02;
/** Milliseconds from one look at the workers to the next. */
const lookEvery = 100;

/** How works of one kind are done. */
interface Way<W, A> {
  /** Seconds, about. */
  readonly effortOf: (work: W) => number;
  readonly here: (piece: W, report: (done: number) => void) => readonly A[];
}

export function openLabor(jobs: number, host: Host): Labor {
  const workers = new Workers(jobs);
  const pace = new Pace();
  const names = new SharedNames();

  /** The answers to each work in the order of its tasks. */
  async function share<W extends Work | OrderWork, A extends WorkerReply["answers"][number]>(
    works: readonly W[],
    way: Way<W, A>,
  ): Promise<readonly (readonly A[])[]> {
    const answers = works.map((): A[] => []);
    const count = works.reduce((sum, { tasks }) => sum + tasks.length, 0);
    const bar = await host.showProgress(count);
    const isWorthIt = (left: number, effort: number): boolean => {
      const least = left === 1 ? longSingle : workers.areRunning ? worthSending : worthStarting;
      return jobs > 1 && pace.secondsOf(effort) > least;
    };
    let done = 0;
    let effort = works.reduce((sum, work) => sum + way.effortOf(work), 0);
    for (const [i, work] of works.entries()) {
      for (const task of work.tasks) {
        if (isWorthIt(count - done, effort)) break;
        const single = { ...work, tasks: [task] };
        const guess = way.effortOf(single);
        const before = host.processorSeconds();
        answers[i]!.push(...way.here(single, (part) => bar?.show(done + part)));
        pace.add(guess, host.processorSeconds() - before);
        effort -= guess;
        done += 1;
        bar?.show(done);
        await host.breathe();
      }
    }
    if (done < count) await sendAll(longestFirst(works, done, jobs, way.effortOf), { done, answers, bar });
    bar?.end();
    return answers;
  }

  async function sendAll<W extends Work | OrderWork>(
    pieces: readonly Piece<W>[],
    {
      done,
      answers,
      bar,
    }: { readonly done: number; readonly answers: unknown[][]; readonly bar: Progress | undefined },
  ): Promise<void> {
    const thousandths = new Int32Array(new SharedArrayBuffer(4 * pieces.length));
    const look = (): void => bar?.show(done + thousandths.reduce((sum, each) => sum + each, 0) / 1000);
    const looks = setInterval(look, lookEvery);
    try {
      await Promise.all(
        pieces.map(async ({ of, from, work }, place) => {
          const found = (await workers.send(work, { thousandths, place })) as readonly unknown[];
          found.forEach((answer, i) => (answers[of]![from + i] = names.share(answer)));
        }),
      );
    } finally {
      clearInterval(looks);
    }
  }

  const simulated = { effortOf, here: doWork } as const;
  async function doAll<W extends Work>(works: readonly W[]): Promise<readonly (readonly AnswerTo<W>[])[]> {
    return share<W, AnswerTo<W>>(works, simulated);
  }
  return {
    jobs,
    tally: workers.tally,
    doAll,
    do: async (work) => (await doAll([work]))[0] ?? [],
    async run(order, tasks) {
      const here = orderRunner(order);
      const work: OrderWork = { kind: "order", order, tasks };
      const way = {
        effortOf: (piece: OrderWork) => piece.tasks.length * effortOfRun(order),
        here: (piece: OrderWork) => piece.tasks.map(here),
      };
      return (await share<OrderWork, OrderAnswer>([work], way))[0] ?? [];
    },
    async study(scenarios, found) {
      const [first] = scenarios;
      if (first === undefined) return;
      const bar = await host.showProgress(scenarios.length, "points");
      const isSent = jobs > 1 && scenarios.length > 1 && scenarios.length * effortOfStudy(first) > worthStarting;
      const indexes = scenarios.keys();
      let done = 0;
      const studyNext = async (): Promise<void> => {
        // Each worker takes the next point when it is free.
        for (const index of indexes) {
          const scenario = scenarios[index]!;
          const outcome = isSent ? (await workers.send({ kind: "point", scenario }))[0] : studyPoint(scenario);
          found(outcome as PointOutcome, index);
          done += 1;
          bar?.show(done);
          if (!isSent) await host.breathe();
        }
      };
      await Promise.all(Array.from({ length: isSent ? jobs : 1 }, studyNext));
      bar?.end();
    },
    end: () => workers.end(),
  };
}

function effortOfStudy(scenario: Scenario): number {
  const tasks = Array.from({ length: scenario.run.replications }, (_, i) => ({ replication: i + 1, scale: null }));
  return effortOf({ kind: "replications", scenario, tasks });
}
