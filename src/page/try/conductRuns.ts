// Runs a cell as the command `run` does, in pieces, and gives a rough answer after the first replications.
import { CELL } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import {
  beginWarmUpSearch,
  pilotsWanted,
  settleWarmUp,
  type SettledScenario,
  type WarmUpSearch,
} from "#analysis/statistics/warmUpSearch.ts";
import { beginStudy, nextWanted, withAnswers } from "#analysis/study/study.ts";
import { measureOf, summarizeMeasures } from "#analysis/study/summarizeMeasures.ts";
import type { Job } from "#page/answer/pool.ts";
import type { Conclusion, MadeRuns } from "#page/trial/concludeTrial.ts";
import { headline } from "#report/words/madeWords.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface Rough {
  readonly kind: "rough";
  readonly replications: number;
  readonly parts: Pick<Interval, "mean" | "halfWidth"> | undefined;
}

export interface Done {
  readonly made: MadeRuns;
  readonly conclusion: Conclusion;
}

/** What the runs report on their way. */
export interface Progress {
  /** For the rough answers; the search finds the one of the final answer. */
  readonly likelyWarmup: number;
  readonly onRough: (rough: Rough) => void;
  /** Runs that are made and those that are wanted so far. */
  readonly onMade: (made: number, wanted: number) => void;
}

/** Replications after which a rough answer is shown. */
const roughAfter = [1, 5];
/** Pieces of a job at a time, so that other jobs are not kept waiting. */
const lanes = 2;

export async function conductRuns(job: Job, scenario: Scenario, progress: Progress): Promise<Done> {
  const counted = countedJob(job, scenario, progress);
  const likely = withWarmup(scenario, progress.likelyWarmup);
  const first = await roughly(counted, likely, progress);
  const settled = await settle(counted, scenario);
  const isAsLikely = JSON.stringify(settled.scenario.run) === JSON.stringify(likely.run);
  let state = withAnswers(beginStudy(settled.scenario), isAsLikely ? first : []);
  for (let tasks = nextWanted(state); tasks.length > 0; tasks = nextWanted(state))
    state = withAnswers(state, await counted.replications(settled.scenario, tasks));
  const made = { settled, answers: state.answers };
  return { made, conclusion: await job.ask("concludeTrial", made) };
}

interface CountedJob {
  replications(scenario: Scenario, tasks: readonly ReplicationTask[]): Promise<readonly ReplicationAnswer[]>;
  pilots(search: WarmUpSearch, tasks: ReturnType<typeof pilotsWanted>): Promise<WarmUpSearch["answers"]>;
}

function countedJob({ ask }: Job, { run }: Scenario, { onMade }: Progress): CountedJob {
  let [made, asked] = [0, 0];
  const inPieces = async <Task, Answer>(
    tasks: readonly Task[],
    send: (task: Task) => Promise<readonly Answer[]>,
  ): Promise<readonly Answer[]> => {
    asked += tasks.length;
    const answers: (readonly Answer[])[] = [];
    const next = tasks.entries();
    const lane = async (): Promise<void> => {
      for (const [i, task] of next) {
        answers[i] = await send(task);
        made += 1;
        onMade(made, Math.max(asked, run.replications));
      }
    };
    await Promise.all(Array.from({ length: lanes }, lane));
    return answers.flat();
  };
  return {
    replications: (scenario, tasks) => inPieces(tasks, (task) => ask("openReplications", { scenario, tasks: [task] })),
    pilots: ({ scenario }, tasks) => inPieces(tasks, (task) => ask("openPilots", { scenario, tasks: [task] })),
  };
}

async function roughly(
  job: CountedJob,
  scenario: Scenario,
  { onRough }: Progress,
): Promise<readonly ReplicationAnswer[]> {
  let answers: readonly ReplicationAnswer[] = [];
  for (const count of roughAfter.filter((each) => each < scenario.run.replications)) {
    const tasks = Array.from({ length: count - answers.length }, (_, i): ReplicationTask => {
      return { replication: answers.length + i + 1, scale: null };
    });
    answers = [...answers, ...(await job.replications(scenario, tasks))];
    // The conclusion says what stands still.
    if (answers.some(({ standstill }) => standstill !== null)) return answers;
    onRough({ kind: "rough", replications: count, parts: partsOf(answers) });
  }
  return answers;
}

const partsOf = (answers: readonly ReplicationAnswer[]): Rough["parts"] =>
  measureOf(summarizeMeasures(answers), CELL, headline)?.interval;

async function settle(job: CountedJob, scenario: Scenario): Promise<SettledScenario> {
  let search = beginWarmUpSearch(scenario);
  for (let tasks = pilotsWanted(search); tasks.length > 0; tasks = pilotsWanted(search))
    search = { ...search, answers: [...search.answers, ...(await job.pilots(search, tasks))] };
  return settleWarmUp(search);
}

function withWarmup(scenario: Scenario, warmup: number): Scenario {
  const { run } = scenario;
  return run.warmup === "auto" ? { ...scenario, run: { ...run, warmup: Math.min(warmup, run.length / 2) } } : scenario;
}
