// Fills the tables of one or several studies: what was measured, how time was spent, where the bottleneck sits.
import type { BottleneckResource, BottleneckStep } from "#analysis/bottleneck/bottleneck.ts";
import type { Study } from "#analysis/study/study.ts";
import type { MeasureSummary } from "#analysis/study/summarizeMeasures.ts";
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import { calendarTables } from "./calendarTable.ts";
import { changesTables } from "#report/tables/asked/changesTable.ts";
import { costTables } from "./costTable.ts";
import { circuitsTable, idealCycleTable } from "./idealTables.ts";
import { kpiTable } from "./kpiTable.ts";
import { lostTables } from "#report/tables/asked/lostTable.ts";
import { slackTables } from "#report/tables/asked/slackTable.ts";
import { stopsTables } from "./stopsTable.ts";
import { fillTable, type Cell, type Table } from "./table.ts";
import { measuredTables } from "#report/tables/asked/measuredTable.ts";
import { totalsTables } from "#report/tables/asked/totalsTable.ts";
import { windowTable } from "./windowWords.ts";
import { bottleneckSpec, replicationsSpec, throughputSpec, timeByStateSpec } from "./tableSpecs.ts";

const secondsPerHour = 3600;

/** Rows of all studies, one study after the other. */
function rowsOf<Item>(
  studies: readonly Study[],
  items: (study: Study) => readonly Item[],
  row: (item: Item) => readonly Cell[],
): Table["rows"] {
  return studies.flatMap((study) => items(study).map((item) => [study.scenario.name, ...row(item)]));
}

export function throughputTable(studies: readonly Study[]): Table {
  return fillTable(
    throughputSpec,
    rowsOf(studies, ({ measures }) => measures, throughputRow),
  );
}

function throughputRow({ resource, measure, unit, interval, quantiles, min, max }: MeasureSummary): readonly Cell[] {
  const { p05, p50, p95 } = quantiles;
  const { mean, halfWidth, sd, count } = interval;
  return [resource, measure, unit, mean, halfWidth, sd, min, p05, p50, p95, max, count];
}

export function timeByStateTable(studies: readonly Study[]): Table {
  return fillTable(
    timeByStateSpec,
    rowsOf(studies, ({ states }) => states, stateRow),
  );
}

function stateRow({ resource, state, kind, cause, share }: StateSummary): readonly Cell[] {
  return [resource, state, kind, cause, share.mean, share.halfWidth, share.mean * secondsPerHour];
}

/** None where there is nothing to say. */
export function windowTables(
  studies: readonly (Pick<Study, "scenario" | "windows"> & Partial<Pick<Study, "spreads">>)[],
): readonly Table[] {
  const table = windowTable(
    studies.map(({ scenario, windows, spreads = [] }) => ({ name: scenario.name, windows, spreads })),
  );
  return table.rows.length === 0 ? [] : [table];
}

export function bottleneckTable(studies: readonly Study[]): Table {
  return fillTable(
    bottleneckSpec,
    rowsOf(
      studies,
      ({ bottleneck }) => bottleneck.flatMap(bottleneckRows),
      (row) => row,
    ),
  );
}

/** A resource, then its steps. */
function bottleneckRows(found: BottleneckResource, place: number): readonly (readonly Cell[])[] {
  const resource = found.resources.join(", ");
  const { share, tiedShare, utilization, activeShare, longestActiveShare, longestActiveAlone, slackPerShot } = found;
  const shares = [share.mean, share.halfWidth, tiedShare];
  const activity = [utilization, activeShare, longestActiveShare, longestActiveAlone];
  return [
    ["resource", place + 1, resource, null, ...shares, ...activity, slackPerShot, null, null, null],
    ...found.steps.map((step, i) => ["step", i + 1, resource, step.step, ...stepCells(step)]),
  ];
}

function stepCells({ share, tiedShare, elasticity, elasticityMethod }: BottleneckStep): readonly Cell[] {
  const slope = [elasticity?.mean ?? null, elasticity?.halfWidth ?? null, elasticityMethod];
  return [share.mean, share.halfWidth, tiedShare, null, null, null, null, null, ...slope];
}

export function replicationsTable(studies: readonly Study[]): Table {
  return fillTable(
    replicationsSpec,
    rowsOf(
      studies,
      ({ measures }) => byReplication(measures),
      (row) => row,
    ),
  );
}

/** All measures of the first replication, then all of the second. */
function byReplication(measures: readonly MeasureSummary[]): readonly (readonly Cell[])[] {
  const count = measures[0]?.values.length ?? 0;
  return Array.from({ length: count }, (_, i) => i).flatMap((i) =>
    measures.flatMap(({ resource, measure, unit, values }) => {
      const value = values[i] ?? null;
      return value === null ? [] : [[i + 1, resource, measure, unit, value]];
    }),
  );
}

/** All tables of these studies but the comparison, in the order of the data dictionary. */
export function studyTables(studies: readonly Study[]): readonly Table[] {
  return [
    throughputTable(studies),
    ...totalsTables(studies),
    ...measuredTables(studies),
    timeByStateTable(studies),
    bottleneckTable(studies),
    idealCycleTable(studies),
    circuitsTable(studies),
    ...slackTables(studies),
    replicationsTable(studies),
    kpiTable(studies),
    ...changesTables(studies),
    ...lostTables(studies),
    ...costTables(studies),
    ...stopsTables(studies),
    ...calendarTables(studies),
    ...windowTables(studies),
  ];
}
