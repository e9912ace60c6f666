// The one public door: what a program may use of blowcell, by name and with types.
import {
  comparableScenarios,
  compareStudies,
  overOneSpan,
  type ComparisonRow,
  type Verdict,
} from "#analysis/comparison.ts";
import type { IdealCircuit } from "#analysis/idealCircuit.ts";
import { idealCycle, type IdealCycle, type IdealStep } from "#analysis/idealCycle.ts";
import type { Interval } from "#analysis/interval.ts";
import { settleEstimates, type Estimated } from "#analysis/settleEstimates.ts";
import { runStudy, settleInOneGo, studyOfSettled, type Study, type StudyOutcome } from "#analysis/study.ts";
import type { Distribution } from "#engine/distribution.ts";
import type { Issue, Place } from "#foundation/issue.ts";
import { comparisonTable } from "#report/comparisonTable.ts";
import { toCsv } from "#report/csv.ts";
import { studyTables } from "#report/studyTables.ts";
import type { Table } from "#report/table.ts";
import { readScenario } from "#scenario/readScenario.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { scenarioSchema } from "#scenario/scenarioSchema.ts";

export type {
  ComparisonRow,
  Distribution,
  Estimated,
  IdealCircuit,
  IdealCycle,
  IdealStep,
  Interval,
  Issue,
  Place,
  Scenario,
  StationSpec,
  Study,
  StudyOutcome,
  Table,
  Verdict,
};
export { comparisonTable, idealCycle, readScenario, runStudy, scenarioSchema, settleEstimates, studyTables, toCsv };

export interface Comparison {
  /** In the order given, the base first; a cell that comes to rest has an issue instead of a study. */
  readonly outcomes: readonly StudyOutcome[];
  /** Every measure of every other cell against the base; empty where one came to rest. */
  readonly rows: readonly ComparisonRow[];
}

/** Simulates all with the base's seed, length and replications, over one span of time, and holds each against the first. */
export function compareScenarios(scenarios: readonly Scenario[]): Comparison {
  const settled = overOneSpan(comparableScenarios(scenarios).map(settleInOneGo));
  const outcomes = settled.map(studyOfSettled);
  const studies = outcomes.flatMap((outcome) => (outcome.kind === "found" ? [outcome.study] : []));
  const [base, ...others] = studies;
  return { outcomes, rows: base && studies.length === scenarios.length ? compareStudies(base, others) : [] };
}
