// The search for the end of the warm-up: from the series so far to the pilots still wanted, then one cut for all.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { slowestTurn } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import { averagedSeries, warmUp } from "./warmUp.ts";

/** Shots of the first search: 300 batches, which take less time than a work shift. */
const pilotShots = 1500;
/** The factor of the length of a second search where the first finds no end of the warm-up. */
const lengthened = 2;

export interface PilotTask {
  readonly replication: number;
  /** Seconds. */
  readonly length: number;
}

/** Seconds from each shot of the cell to the next, the first from the start of the run. */
export interface PilotAnswer {
  readonly task: PilotTask;
  readonly secondsPerShot: readonly number[];
}

export interface WarmUpSearch {
  readonly scenario: Scenario;
  readonly answers: readonly PilotAnswer[];
}

/** A scenario whose warm-up is a time; `warnings` has an issue where no end was found. */
export interface SettledScenario {
  readonly scenario: Scenario;
  readonly warnings: readonly Issue[];
}

export function beginWarmUpSearch(scenario: Scenario): WarmUpSearch {
  return { scenario, answers: [] };
}

/** First over the beginning of the run. Where that has no end of the warm-up, once over the whole run or one twice as long. */
export function pilotsWanted(search: WarmUpSearch): readonly PilotTask[] {
  const { scenario } = search;
  if (scenario.run.warmup !== "auto") return [];
  for (const length of pilotLengths(search)) {
    const made = answersOf(search, length);
    const replications = new Set(made.map(({ task }) => task.replication));
    const missing = Array.from({ length: scenario.run.replications }, (_, i) => i + 1).filter(
      (r) => !replications.has(r),
    );
    if (missing.length > 0) return missing.map((replication) => ({ replication, length }));
    if (verdict(made).kind === "cut") return [];
  }
  return [];
}

export function runPilot(scenario: Scenario, task: PilotTask): PilotAnswer {
  const plan = planOf(scenario);
  // The plan does not depend on the length of the run.
  const brief = { ...plan, scenario: { ...scenario, run: { ...scenario.run, length: task.length } } };
  const record = runCell(brief, { replication: task.replication, warmup: 0 });
  const ticks = record.stations.flatMap((station) => station.shotTicks).toSorted((a, b) => a - b);
  return { task, secondsPerShot: ticks.map((tick, i) => (tick - (ticks[i - 1] ?? 0)) / TICKS_PER_SECOND) };
}

export function settleWarmUp(search: WarmUpSearch): SettledScenario {
  const { scenario } = search;
  if (scenario.run.warmup !== "auto") return { scenario, warnings: [] };
  const length = pilotLengths(search).findLast((each) => answersOf(search, each).length > 0) ?? scenario.run.length;
  const made = answersOf(search, length);
  const found = verdict(made);
  if (found.kind === "refused") {
    const run = { ...scenario.run, warmup: 0, length: Math.max(length, scenario.run.length) };
    return { scenario: { ...scenario, run }, warnings: [refusal(found.reason, run.length)] };
  }
  const series = averagedSeries(made.map((answer) => answer.secondsPerShot));
  const seconds = series.slice(0, found.observations).reduce((sum, each) => sum + each, 0);
  // A whole second is easier to read and to set again, and is never before the end of the warm-up.
  const warmup = Math.ceil(seconds);
  const run = { ...scenario.run, warmup, length: Math.max(scenario.run.length, length) };
  return { scenario: { ...scenario, run }, warnings: [] };
}

function verdict(answers: readonly PilotAnswer[]): ReturnType<typeof warmUp> {
  return warmUp(averagedSeries(answers.map((answer) => answer.secondsPerShot)));
}

/** A short run as it is, then twice as long; the beginning of a long run, then all of it. */
function pilotLengths({ scenario }: WarmUpSearch): readonly number[] {
  const { length } = scenario.run;
  const shot = slowestTurn(planOf(scenario)) / scenario.stations.length / TICKS_PER_SECOND;
  const pilot = Math.ceil(pilotShots * shot);
  return pilot < length ? [pilot, length] : [length, lengthened * length];
}

function answersOf(search: WarmUpSearch, length: number): readonly PilotAnswer[] {
  return search.answers
    .filter(({ task }) => task.length === length)
    .toSorted((a, b) => a.task.replication - b.task.replication);
}

export const warmUpIssueCodes = {
  "warmup-not-found": [
    "the end of the warm-up is not found, so that the whole run is counted",
    "Make `run.length` longer, or give `run.warmup` as a time.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

function refusal(reason: "trend" | "short", length: number): Issue {
  const why = reason === "trend" ? "the steadiest stretch is in the second half" : "there are too few shots";
  return {
    code: "warmup-not-found",
    severity: "warning",
    path: "run.warmup",
    message: `No end of the warm-up is found in ${formatQuantity(length, "time", { digits: 3 })}: ${why}. The whole run is counted.`,
    value: "auto",
    expected: "a run that is long enough to become steady",
    remedy: "Make `run.length` longer, or give `run.warmup` as a time.",
    fate: "file",
  };
}
