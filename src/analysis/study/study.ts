// The procedure of a study: from the answers so far to the replications still wanted, then to the results.
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { bottleneckResources, type BottleneckResource } from "#analysis/bottleneck/bottleneck.ts";
import type { Changes } from "#analysis/changes/changes.ts";
import type { Lost } from "#analysis/changes/lost.ts";
import { calendarStudy, type CalendarStudy } from "./calendarStudy.ts";
import { costMeasures, costStudy, type CostStudy } from "#analysis/indicators/costStudy.ts";
import { elasticityTasks } from "#analysis/bottleneck/elasticity.ts";
import { idealCycle, type IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { kpiRows, type KpiRow } from "#analysis/indicators/kpiRows.ts";
import type { Reruns, Sensitivity } from "#analysis/bottleneck/reruns.ts";
import { runnerUp, type RunnerUp } from "#analysis/bottleneck/runnerUp.ts";
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import { CELL, type MeasureValue } from "#analysis/replication/measures.ts";
import type { TestedSlack } from "#analysis/bottleneck/slackTest.ts";
import { shotSpreads, type ShotSpread } from "./shotSpread.ts";
import { requiredReplications } from "#analysis/statistics/requiredReplications.ts";
import { standstillIssue } from "./standstillIssue.ts";
import type { StationCycles } from "#analysis/replication/stationCycles.ts";
import { stationWindows, type StationWindow } from "#analysis/window/stationWindow.ts";
import { stopSummaries, type StopSummary } from "./stopSummaries.ts";
import { measureOf, summarizeMeasures, type MeasureSummary } from "./summarizeMeasures.ts";
import { summarizeStates, type StateSummary } from "./summarizeStates.ts";
import { measuredChecks, type MeasuredCheck } from "./measuredChecks.ts";
import { productMeasures, totals, type Total } from "./totals.ts";
import {
  beginWarmUpSearch,
  pilotsWanted,
  settleWarmUp,
  type SettledScenario,
} from "#analysis/statistics/warmUpSearch.ts";
import { doWork } from "#analysis/replication/work.ts";

/** Does not depend on where the replications run: in this thread, in workers, or in a page. */
export interface StudyState {
  readonly scenario: Scenario;
  readonly answers: readonly ReplicationAnswer[];
  readonly sensitivity: Sensitivity;
}

export interface Study {
  readonly scenario: Scenario;
  /** Issues that limit the use of the results. */
  readonly warnings: readonly Issue[];
  /** The wanted precision, and whether it was reached; null where none was wanted. */
  readonly precision: { readonly wanted: number; readonly reached: boolean } | null;
  readonly replications: number;
  readonly measures: readonly MeasureSummary[];
  /** Good parts of the whole observed time; empty without a calendar. */
  readonly totals: readonly Total[];
  /** The model against the real cell; empty where nothing was measured. */
  readonly measured: readonly MeasuredCheck[];
  readonly states: readonly StateSummary[];
  /** The resource that sets the pace comes first. */
  readonly bottleneck: readonly BottleneckResource[];
  /** The resource that would set the pace next. */
  readonly runnerUp: RunnerUp | null;
  /** How much longer leading steps may take; absent where it was not tested. */
  readonly slack?: readonly TestedSlack[];
  readonly ideal: IdealCycle;
  /** Shot to shot, of the first replication. */
  readonly cycles: readonly StationCycles[];
  /** Empty where no material is given. */
  readonly windows: readonly StationWindow[];
  readonly kpis: readonly KpiRow[];
  /** Null where the scenario gives no costs. */
  readonly costs: CostStudy | null;
  /** Null without a calendar or changes. */
  readonly calendar: CalendarStudy | null;
  /** Empty where the cell has no stops. */
  readonly stops: readonly StopSummary[];
  /** The spread of hang, sag and time at heat over the shots; empty where no material is given. */
  readonly spreads: readonly ShotSpread[];
  /** What one change buys, and the parts that were not made by cause; absent where they were not asked for. */
  readonly changes?: Changes;
  readonly lost?: Lost;
}

export type StudyOutcome =
  | { readonly kind: "found"; readonly study: Study }
  /** The cell has a deadlock or an endless loop. */
  | { readonly kind: "stuck"; readonly issue: Issue };

export function beginStudy(scenario: Scenario, sensitivity: Sensitivity = "few"): StudyState {
  return { scenario, answers: [], sensitivity };
}

export function withAnswers(state: StudyState, answers: readonly ReplicationAnswer[]): StudyState {
  return { ...state, answers: [...state.answers, ...answers] };
}

/** The most replications for a wanted precision. */
const mostReplications = 2000;

/**
 * The replications still wanted, in their order; none when the study is finished. The cell as it is comes first, with more
 * replications until the wanted precision is reached, at most twice as many at a time. Where the critical path does not give the
 * effect of a step, common random numbers follow with that step shorter and longer.
 */
export function nextWanted(state: StudyState): readonly ReplicationTask[] {
  const { scenario, answers } = state;
  if (answers.some((answer) => answer.standstill !== null)) return [];
  const missing = missingTasks(answers, scenario.run.replications);
  if (missing.length > 0) return missing;
  const made = answersOf(answers, null);
  const more = missingTasks(answers, replicationsFor(scenario, made));
  if (more.length > 0) return more;
  return elasticityTasks(scenario, made, rerunsOf(state));
}

function replicationsFor(scenario: Scenario, made: readonly ReplicationAnswer[]): number {
  const { precision, replications } = scenario.run;
  if (precision === undefined) return replications;
  const needed = requiredReplications(goodPartsPerHour(made), precision) ?? (made.length < 2 ? 2 : made.length);
  return Math.max(made.length, Math.min(needed, 2 * made.length, mostReplications));
}

function goodPartsPerHour(answers: readonly ReplicationAnswer[]): readonly number[] {
  const isOutput = (value: MeasureValue): boolean => value.resource === CELL && value.measure === "good parts per hour";
  return answers.flatMap(({ measures }) => measures.filter(isOutput).map(({ value }) => value));
}

function precisionReached(scenario: Scenario, made: readonly ReplicationAnswer[]): Study["precision"] {
  const wanted = scenario.run.precision;
  if (wanted === undefined) return null;
  const needed = requiredReplications(goodPartsPerHour(made), wanted);
  return { wanted, reached: needed !== null && needed <= made.length };
}

export function concludeStudy(state: StudyState, warnings: readonly Issue[] = []): StudyOutcome {
  const { scenario } = state;
  const stuck = inOrder(state.answers).find((answer) => answer.standstill !== null);
  if (stuck) return { kind: "stuck", issue: standstillIssue(scenario, stuck) };
  const answers = answersOf(state.answers, null);
  const ideal = idealCycle(scenario);
  const bottleneck = bottleneckResources(scenario, answers, rerunsOf(state), ideal);
  const measures = [...summarizeMeasures(answers), ...summarizeMeasures(productMeasures(scenario, answers))];
  const windows = stationWindows(scenario, ideal, meltRate(measures), rejectShare(scenario, measures));
  const costs = costStudy(scenario, answers, windows);
  return {
    kind: "found",
    study: {
      scenario,
      warnings,
      precision: precisionReached(scenario, answers),
      replications: answers.length,
      measures: inReadingOrder([...measures, ...summarizeMeasures(costMeasures(costs))], resourceOf),
      totals: totals(scenario, measures),
      measured: measuredChecks(scenario, measures),
      states: inReadingOrder(summarizeStates(scenario, answers), resourceOf),
      bottleneck,
      runnerUp: runnerUp(scenario, bottleneck[0], ideal),
      ideal,
      cycles: inReadingOrder(answers[0]?.cycles ?? [], stationOf),
      windows,
      kpis: inReadingOrder(kpiRows(scenario, answers, ideal), resourceOf),
      costs,
      calendar: calendarStudy(scenario, answers),
      stops: inReadingOrder(stopSummaries(scenario, answers), resourceOf),
      spreads: inReadingOrder(shotSpreads(scenario, answers), stationOf),
    },
  };
}

const resourceOf = ({ resource }: { readonly resource: string }): string => resource;
const stationOf = ({ station }: { readonly station: string }): string => station;

/** Undefined where the scenario has no cause of rejects. */
function rejectShare({ quality, maxInMold }: Scenario, measures: readonly MeasureSummary[]): number | undefined {
  if (quality === undefined && maxInMold === undefined) return undefined;
  return measureOf(measures, CELL, "reject share")?.interval.mean;
}

/** kg/s; undefined without throughput. */
function meltRate(measures: readonly MeasureSummary[]): number | undefined {
  const perHour = measureOf(measures, CELL, "melt per hour")?.interval.mean ?? 0;
  return perHour > 0 ? perHour / 3600 : undefined;
}

/** The whole study in one call. */
export function runStudy(scenario: Scenario, sensitivity?: Sensitivity): StudyOutcome {
  return studyOfSettled(settleInOneCall(scenario), sensitivity);
}

export function studyOfSettled({ scenario, warnings }: SettledScenario, sensitivity?: Sensitivity): StudyOutcome {
  let state = beginStudy(scenario, sensitivity);
  for (let tasks = nextWanted(state); tasks.length > 0; tasks = nextWanted(state)) {
    state = withAnswers(state, doWork({ kind: "replications", scenario, tasks }));
  }
  return concludeStudy(state, warnings);
}

/** The scenario with its warm-up found. */
export function settleInOneCall(scenario: Scenario): SettledScenario {
  let search = beginWarmUpSearch(scenario);
  for (let tasks = pilotsWanted(search); tasks.length > 0; tasks = pilotsWanted(search)) {
    search = { ...search, answers: [...search.answers, ...doWork({ kind: "pilots", scenario, tasks })] };
  }
  return settleWarmUp(search);
}

/** Of the cell as it is. */
function missingTasks(answers: readonly ReplicationAnswer[], replications: number): readonly ReplicationTask[] {
  const made = new Set(answersOf(answers, null).map(({ task }) => task.replication));
  return Array.from({ length: replications }, (_, i): ReplicationTask => ({ replication: i + 1, scale: null })).filter(
    ({ replication }) => !made.has(replication),
  );
}

function rerunsOf({ answers, sensitivity }: StudyState): Reruns {
  return { sensitivity, answersTo: (scale) => answersOf(answers, scale) };
}

/** The answers of one variant in the order of replications. */
function answersOf(
  answers: readonly ReplicationAnswer[],
  scale: ReplicationTask["scale"],
): readonly ReplicationAnswer[] {
  const variant = JSON.stringify(scale);
  return inOrder(answers.filter(({ task }) => JSON.stringify(task.scale) === variant));
}

function inOrder(answers: readonly ReplicationAnswer[]): readonly ReplicationAnswer[] {
  return answers.toSorted((one, other) => one.task.replication - other.task.replication);
}
