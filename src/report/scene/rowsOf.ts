// Looks up the rows of a resource in a record.
import { invariant } from "#foundation/invariant.ts";
import type { RecordedResource, SceneRecord } from "./sceneRecord.ts";
import { rowNumberAt, secondsOf, unpackRow, type SceneRow } from "./sceneRow.ts";

/** A row with its place in the list and its end. */
export interface PlacedRow extends SceneRow {
  readonly number: number;
  /** Null where the record ends first. */
  readonly until: number | null;
}

export function resourceOf({ resources }: SceneRecord, name: string): RecordedResource {
  const found = resources.find((resource) => resource.name === name);
  invariant(found, "a resource that is asked for is one of the record", { name });
  return found;
}

export function rowOf({ words }: SceneRecord, { rows }: RecordedResource, number: number): PlacedRow {
  const until = number + 1 < rows.count ? secondsOf(rows, number + 1) : null;
  return { ...unpackRow(rows, number, words), number, until };
}

export function rowAt(record: SceneRecord, resource: RecordedResource, seconds: number): PlacedRow {
  return rowOf(record, resource, rowNumberAt(resource.rows, seconds));
}

/** The last row up to this one that satisfies the test. */
export function lastRow(
  record: SceneRecord,
  resource: RecordedResource,
  from: number,
  test: (row: PlacedRow) => boolean,
): PlacedRow | undefined {
  for (let number = from; number >= 0; number--) {
    const row = rowOf(record, resource, number);
    if (test(row)) return row;
  }
  return undefined;
}

/** Share of the row that is over; 0 where its end is not known. */
export function shareOver({ seconds, until }: PlacedRow, at: number): number {
  if (until === null) return 0;
  return until > seconds ? Math.min(1, Math.max(0, (at - seconds) / (until - seconds))) : 1;
}

/** Share of the step that is over, where stops may hold it. */
export function stepShare(row: PlacedRow, at: number): number {
  return row.from + (row.to - row.from) * shareOver(row, at);
}
