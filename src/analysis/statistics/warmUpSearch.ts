// The search for the end of the warm-up: from the series so far to the pilots still wanted, then one cut for all.
import { distributionMean } from "#engine/distributions/moments.ts";
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
/** A second search of a long run takes so many times as many: a run that is not steady by then has no end to be found. */
const mostSearched = 100;
/** The factor of the length of a second search where the first finds no end of the warm-up. */
const lengthened = 2;
/** Mean repairs of the longest kind of stop that a warm-up lasts at least, and the part of the run that it may take for them. */
const repairsBefore = 3;
const mostOfRun = 0.1;

export interface PilotTask {
  readonly replication: number;
  /** Seconds. */
  readonly length: number;
}

/** Seconds from each shot of the cell to the next, the first from the start of the run. */
export interface PilotAnswer {
  readonly task: PilotTask;
  readonly secondsPerShot: readonly number[];
  /** The same of good parts after the last server; absent without a takeaway, where parts follow the shots. */
  readonly secondsPerPart?: readonly number[];
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

/** First over the beginning of the run. Where that has no end of the warm-up, once over the run or one twice as long. */
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
    if (endOf(made).kind === "found") return [];
  }
  return [];
}

export function runPilot(scenario: Scenario, task: PilotTask): PilotAnswer {
  const plan = planOf(scenario);
  // The plan does not depend on the length of the run.
  const brief = { ...plan, scenario: { ...scenario, run: { ...scenario.run, length: task.length } } };
  const parts: number[] = [];
  const partReader = (tick: number): void => void parts.push(tick);
  const options = { replication: task.replication, warmup: 0 };
  const record = runCell(brief, scenario.takeaway ? { ...options, partReader } : options);
  const ticks = record.stations.flatMap((station) => station.shotTicks).toSorted((a, b) => a - b);
  return {
    task,
    secondsPerShot: intervalsOf(ticks),
    ...(scenario.takeaway ? { secondsPerPart: intervalsOf(parts) } : {}),
  };
}

/** The first interval begins at the start of the run. */
const intervalsOf = (ticks: readonly number[]): readonly number[] =>
  ticks.map((tick, i) => (tick - (ticks[i - 1] ?? 0)) / TICKS_PER_SECOND);

export function settleWarmUp(search: WarmUpSearch): SettledScenario {
  const { scenario } = search;
  if (scenario.run.warmup !== "auto") return { scenario, warnings: [] };
  const length = pilotLengths(search).findLast((each) => answersOf(search, each).length > 0) ?? scenario.run.length;
  const made = answersOf(search, length);
  const found = endOf(made);
  if (found.kind === "refused") {
    const run = { ...scenario.run, warmup: 0, length: Math.max(length, scenario.run.length) };
    return { scenario: { ...scenario, run }, warnings: [refusal(found.reason, length)] };
  }
  const whole = Math.max(scenario.run.length, length);
  // A whole second is easier to read and to set again, and is never before the end of the warm-up.
  const warmup = Math.ceil(Math.max(found.seconds, untilStopsAreUsual(scenario, whole)));
  const run = { ...scenario.run, warmup, length: whole };
  return { scenario: { ...scenario, run }, warnings: [] };
}

/** At the start nothing is being repaired. After a few repairs the share of stopped time is that of any later hour. */
function untilStopsAreUsual({ stops = [] }: Scenario, length: number): number {
  const longest = Math.max(0, ...stops.map(({ repair }) => distributionMean(repair)));
  return Math.min(repairsBefore * longest, Math.floor(mostOfRun * length));
}

type End =
  | { readonly kind: "found"; readonly seconds: number }
  | { readonly kind: "refused"; readonly reason: "trend" | "short" };

/** The end of the warm-up of shots, and where there is a takeaway of good parts out: the later one counts. */
function endOf(answers: readonly PilotAnswer[]): End {
  const parts = answers.flatMap(({ secondsPerPart }) => (secondsPerPart ? [secondsPerPart] : []));
  const ends = [answers.map(({ secondsPerShot }) => secondsPerShot), parts]
    .filter(({ length }) => length > 0)
    .map(endIn);
  const refused = ends.find(({ kind }) => kind === "refused");
  if (refused) return refused;
  return { kind: "found", seconds: Math.max(...ends.map((end) => (end.kind === "found" ? end.seconds : 0))) };
}

function endIn(replications: readonly (readonly number[])[]): End {
  const series = averagedSeries(replications);
  const found = warmUp(series);
  if (found.kind === "refused") return found;
  return { kind: "found", seconds: series.slice(0, found.observations).reduce((sum, each) => sum + each, 0) };
}

/** A short run as it is, then twice as long; the beginning of a long run, then all or much of it. */
function pilotLengths({ scenario }: WarmUpSearch): readonly number[] {
  const { length } = scenario.run;
  const shot = slowestTurn(planOf(scenario)) / scenario.stations.length / TICKS_PER_SECOND;
  const pilot = Math.ceil(pilotShots * shot);
  return pilot < length ? [pilot, Math.min(length, mostSearched * pilot)] : [length, lengthened * length];
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
