// Fills the table of a sweep: the varied values as columns, then one measure a row.
import type { FoundPoint, PointOutcome } from "#analysis/study/sweepPoint.ts";
import { CELL } from "#analysis/replication/measures.ts";
import {
  halfWidth,
  meanColumn,
  measureColumn,
  number,
  resourceColumn,
  scenarioColumn,
  text,
  unitColumn,
} from "#report/tables/columns.ts";
import { fillTable, type Cell, type ColumnSpec, type Table, type TableSpec } from "#report/tables/table.ts";

export interface SweepPoint {
  /** In the order of the varied paths, as they were set. */
  readonly values: readonly string[];
  readonly outcome: PointOutcome;
}

export interface Sweep {
  /** Of the scenario. */
  readonly name: string;
  readonly paths: readonly string[];
  readonly points: readonly SweepPoint[];
}

export const sweepSpec: TableSpec = {
  name: "sweep",
  meaning:
    "One measure of one resource at one point of a sweep. After `variant` each varied path has a column, with the unit of its numbers in the name, such as `stations.*.steps.cool_s`; `_shift` marks moves such as `+1 s`. Refused points have no row. `ideal seconds per shot` is the ideal cycle of the point.",
  takesMore: true,
  columns: [
    scenarioColumn,
    resourceColumn,
    measureColumn,
    unitColumn,
    meanColumn,
    halfWidth("half_width_95", "the mean"),
  ],
};

/** The values of one path: as numbers where all of them have one unit. */
export interface VariedColumn {
  readonly spec: ColumnSpec;
  readonly cells: readonly Cell[];
}

const valuePattern = /^([+-]?)((?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)\s*([^\s\d].*)?$/u;

export function variedColumn({ paths, points }: Sweep, index: number): VariedColumn {
  const values = points.map((point) => point.values[index] ?? "");
  const path = paths[index] ?? "";
  const parts = values.map((value) => valuePattern.exec(value));
  const forms = new Set(parts.map((part) => (part ? `${part[1] === "" ? "" : "_shift"} ${part[3] ?? ""}` : "text")));
  const [form = "text"] = forms;
  if (forms.size !== 1 || form === "text") {
    return { spec: text(path, `Value of \`${path}\` at this point, as it was set`), cells: values };
  }
  const [suffix = "", unit = ""] = form.split(/ (.*)/su);
  const name = `${path}${suffix}${unit === "" ? "" : `_${unit}`}`;
  const meaning = `${suffix === "" ? "Value" : "Shift"} of \`${path}\` at this point`;
  const cells = parts.map((part) => Number(`${part?.[1] ?? ""}${part?.[2] ?? ""}`));
  return { spec: unit === "" ? number(name, meaning) : number(name, meaning, unit), cells };
}

export function sweepTable(sweep: Sweep): Table {
  const varied = sweep.paths.map((_, i) => variedColumn(sweep, i));
  const [scenario, ...columns] = sweepSpec.columns;
  const rows = sweep.points.flatMap(({ outcome }, place) => {
    if (outcome.kind === "refused") return [];
    const values = varied.map(({ cells }) => cells[place] ?? null);
    return [...outcome.measures.map(measureCells), ...idealCells(outcome)].map((row) => [
      sweep.name,
      ...values,
      ...row,
    ]);
  });
  const spec = { ...sweepSpec, columns: [scenario!, ...varied.map((each) => each.spec), ...columns] };
  return fillTable(spec, rows);
}

function measureCells({ resource, measure, unit, mean, halfWidth: half }: FoundPoint["measures"][number]): Cell[] {
  return [resource, measure, unit, mean, half];
}

/** A run can be faster than a cycle whose order was found by running, so that cycle is not called ideal. */
function idealMeasure(measure: string, { ideal }: FoundPoint): string {
  return ideal.method === "order found by running" ? `${measure} at mean times` : `ideal ${measure}`;
}

function idealCells(point: FoundPoint): readonly Cell[][] {
  const { secondsPerShot, partsPerHour } = point.ideal;
  return [
    [CELL, idealMeasure("seconds per shot", point), "s", secondsPerShot, null],
    ...(partsPerHour === null ? [] : [[CELL, idealMeasure("parts per hour", point), "1/h", partsPerHour, null]]),
  ];
}
