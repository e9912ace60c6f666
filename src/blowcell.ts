// The one public door: what a program may use of blowcell, by name and with types.
import type { BottleneckResource, BottleneckStep } from "#analysis/bottleneck/bottleneck.ts";
import {
  comparableScenarios,
  compareStudies,
  overOneSpan,
  type ComparisonRow,
  type Verdict,
} from "#analysis/study/comparison.ts";
import type { CostRow, CostStudy } from "#analysis/indicators/costStudy.ts";
import type { IdealCircuit } from "#analysis/ideal/idealCircuit.ts";
import { idealCycle, type IdealCycle, type IdealStep } from "#analysis/ideal/idealCycle.ts";
import type { Campaign, Order, OrderChange, OrderQuantity } from "#analysis/promise/order.ts";
import { runOrder } from "#analysis/promise/orderProcedure.ts";
import type {
  DueChance,
  FinishTime,
  LineSummary,
  OrderOutcome,
  OrderStudy,
  UseSummary,
} from "#analysis/promise/orderStudy.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import type { KpiRow } from "#analysis/indicators/kpiRows.ts";
import type { RunnerUp } from "#analysis/bottleneck/runnerUp.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { StationWindow } from "#analysis/window/stationWindow.ts";
import type { ShotSpread } from "#analysis/study/shotSpread.ts";
import type { StopSummary } from "#analysis/study/stopSummaries.ts";
import { runComparison } from "#analysis/study/runComparison.ts";
import { runStudy, settleInOneCall, type Study, type StudyOutcome } from "#analysis/study/study.ts";
import type { MeasureSummary } from "#analysis/study/summarizeMeasures.ts";
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Issue, Place } from "#foundation/issue.ts";
import { comparisonTable as comparisonRows } from "#report/tables/comparisonTable.ts";
import { toCsv } from "#report/tables/csv.ts";
import { studyTables as tablesOf } from "#report/tables/studyTables.ts";
import type { Cell, ColumnSpec, Table } from "#report/tables/table.ts";
import { withVariants } from "#report/tables/variantColumn.ts";
import type { Assumption } from "#scenario/values/assumption.ts";
import type { ReadOptions, ScenarioReading } from "#scenario/resolving/readScenario.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { scenarioSchema } from "#scenario/keys/scenarioSchema.ts";

export type {
  Assumption,
  BottleneckResource,
  BottleneckStep,
  Campaign,
  Cell,
  ColumnSpec,
  ComparisonRow,
  CostRow,
  CostStudy,
  Distribution,
  DueChance,
  FinishTime,
  IdealCircuit,
  IdealCycle,
  IdealStep,
  Interval,
  Issue,
  KpiRow,
  LineSummary,
  MeasureSummary,
  Order,
  OrderChange,
  OrderOutcome,
  OrderQuantity,
  OrderStudy,
  Place,
  ReadOptions,
  RunnerUp,
  Scenario,
  ScenarioReading,
  ShotSpread,
  StateSummary,
  StationSpec,
  StationWindow,
  StopSummary,
  Study,
  StudyOutcome,
  Table,
  UseSummary,
  Verdict,
};
export { compareStudies, idealCycle, runStudy, scenarioSchema, toCsv };
// All runs that the decision on the due date needs.
export { runOrder as promiseOrder };
// The scenario can be run: estimated times are computed, or reported as missing.
export { readSettled as readScenario };

export interface Comparison {
  /** In the order given, the base first; a cell that comes to rest has an issue instead of a study. */
  readonly outcomes: readonly StudyOutcome[];
  /** Every measure of every other cell against the base; empty where one came to rest. */
  readonly rows: readonly ComparisonRow[];
}

/** The tables of the CSV files, with the settings of each scenario in the column `variant`. */
export function studyTables(studies: readonly Study[]): readonly Table[] {
  return withVariants(
    tablesOf(studies),
    studies.map(({ scenario }) => scenario),
  );
}

/** The table of `comparison.csv`; `scenarios` are those compared. */
export function comparisonTable(rows: readonly ComparisonRow[], scenarios: readonly Scenario[]): Table {
  return withVariants([comparisonRows(rows)], scenarios)[0]!;
}

/** Simulates all with the base's seed, length and replications, over one span of time, and holds each against the first. */
export function compareScenarios(scenarios: readonly Scenario[]): Comparison {
  const settled = overOneSpan(comparableScenarios(scenarios).map(settleInOneCall));
  const outcomes = runComparison(settled);
  const studies = outcomes.flatMap((outcome) => (outcome.kind === "found" ? [outcome.study] : []));
  const [base, ...others] = studies;
  return { outcomes, rows: base && studies.length === scenarios.length ? compareStudies(base, others) : [] };
}
