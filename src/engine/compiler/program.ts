// Compiles a step table: names become numbers, steps become rows, and rows become what the core runs.
import { coreImage, type CoreImage } from "./coreImage.ts";
import { Names } from "./names.ts";
import { resolveRows, stepNumber } from "./resolveRows.ts";
import type { Row } from "./row.ts";
import type { StepTable, StopMark } from "./stepTable.ts";

/** The numbers of rows, resources and so on are their places in these lists and in those of the table. */
export interface Program extends Pick<Names, "activities" | "counters" | "states" | "streams"> {
  readonly table: StepTable;
  readonly rows: readonly Row[];
  /** First row of each process, and the row with which it begins. */
  readonly firstRow: readonly number[];
  readonly beginsAt: readonly number[];
  /** By counter: what its rise says of a stop. */
  readonly stopMarks: ReadonlyMap<number, StopMark>;
  /** By resource: its activity while it is stopped; -1 where no step stops it. */
  readonly stoppedActivity: readonly number[];
  /** By state: its number among the states of its resource from which waits of others come; 0 where none does. */
  readonly causes: readonly number[];
  readonly image: CoreImage;
}

/** Throws BrokenInvariant where the table names what it does not hold. */
export function compileTable(table: StepTable): Program {
  const { processes } = table;
  const names = new Names(table);
  let rowCount = 0;
  const firstRow = processes.map(({ steps }) => (rowCount += steps.length) - steps.length);
  const rows = resolveRows(table, names, firstRow);
  const stoppedActivity = table.resources.map(({ name, whenStopped = "" }, resource) =>
    rows.some(({ stops }) => stops === resource)
      ? names.activity({ resource: name, step: whenStopped, process: name, owner: name })
      : -1,
  );
  const image = coreImage(table, rows, names, stoppedActivity);
  const beginsAt = processes.map(
    (process, p) => firstRow[p]! + (process.begins ? stepNumber(process, process.begins) : 0),
  );
  const { activities, counters, states, stopMarks, streams } = names;
  const compiled = { table, rows, firstRow, beginsAt, stoppedActivity, causes: causesOf(rows, states.length), image };
  return { ...compiled, activities, counters, states, stopMarks, streams };
}

function causesOf(rows: readonly Row[], states: number): readonly number[] {
  const causes = new Map<number, Set<number>>();
  for (const { resource, state } of rows.flatMap(({ needs }) => needs.flatMap((need) => need.causes)))
    causes.set(resource, (causes.get(resource) ?? new Set()).add(state));
  const numbers = Array.from({ length: states }, () => 0);
  for (const own of causes.values()) [...own].forEach((state, i) => (numbers[state] = i + 1));
  return numbers;
}
