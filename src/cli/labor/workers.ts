// The worker threads of a call: a piece of work goes to one of them and comes back as its answers.
import type { Scenario } from "#scenario/scenario.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { Parcel, SentWork, WorkerReply } from "./answerWork.ts";

/** Milliseconds. */
const longestIdle = 600_000;

interface Pool {
  run(parcel: Parcel): Promise<WorkerReply>;
  destroy(): Promise<void>;
}

export class Workers {
  /** How many tasks each thread has done. */
  readonly tally = new Map<number, number>();
  readonly #jobs: number;
  #pool: Promise<Pool> | undefined;
  /** A worker plans a scenario once, and knows it by this number when it comes again. */
  readonly #numbers = new WeakMap<Scenario | Order, number>();
  #count = 0;

  constructor(jobs: number) {
    this.#jobs = jobs;
  }

  get areRunning(): boolean {
    return this.#pool !== undefined;
  }

  /** `done`, in shared memory: thousandths of a task that are done, at `place`. */
  async send(
    work: SentWork,
    done?: { readonly thousandths: Int32Array; readonly place: number },
  ): Promise<WorkerReply["answers"]> {
    this.#pool ??= openPool(this.#jobs);
    const pool = await this.#pool;
    const subject = work.kind === "order" ? work.order : work.scenario;
    const number = this.#numbers.get(subject) ?? this.#count++;
    this.#numbers.set(subject, number);
    const { answers, thread } = await pool.run({ work, number, ...(done ? { done } : {}) });
    this.tally.set(thread, (this.tally.get(thread) ?? 0) + answers.length);
    return answers;
  }

  async end(): Promise<void> {
    await (await this.#pool)?.destroy();
  }
}

async function openPool(jobs: number): Promise<Pool> {
  const { Piscina } = await import("piscina");
  return new Piscina<Parcel, WorkerReply>({
    filename: new URL("worker.js", import.meta.url).href,
    // Another thread starts when all are busy, so there are never more than pieces of work.
    minThreads: 1,
    maxThreads: jobs,
    // Between two rounds of work a thread waits: a new one would have to load the program again.
    idleTimeout: longestIdle,
  });
}
