// Ways from moment to moment of a record: by one, to the next shot of a station, to the next wait.
import { resourceOf, rowOf } from "./rowsOf.ts";
import type { Scene } from "./scene.ts";
import type { SceneRecord } from "./sceneRecord.ts";
import { rowNumberAt } from "./sceneRow.ts";

/** The last moment at or before this time. */
export function momentNumber({ moments }: SceneRecord, seconds: number): number {
  let [first, beyond] = [0, moments.length];
  while (beyond - first > 1) {
    const middle = (first + beyond) >> 1;
    if (moments[middle]! <= seconds) first = middle;
    else beyond = middle;
  }
  return first;
}

/** The time of the moment before, or of this one where time has passed since; null at the beginning. */
export function previousMoment(
  { moments }: SceneRecord,
  { seconds, moment }: Pick<Scene, "seconds" | "moment">,
): number | null {
  if (moments[moment]! < seconds) return moments[moment]!;
  return moments[moment - 1] ?? null;
}

/** Null at the end. */
export function nextMoment({ moments }: SceneRecord, { moment }: Pick<Scene, "moment">): number | null {
  return moments[moment + 1] ?? null;
}

export type Direction = "next" | "previous";

/** When the parison of the next shot, or of the one before, begins at this station; null where there is none. */
export function shotFrom(record: SceneRecord, station: string, seconds: number, direction: Direction): number | null {
  return startFrom(record, station, seconds, direction, ({ kind, role }) => {
    return kind === "working" && (role === "mold.drop" || (role === "mold.close" && record.delivery === "continuous"));
  });
}

/** When this resource next begins to wait, or did so before; of a wait in several states, the first. */
export function waitFrom(record: SceneRecord, resource: string, seconds: number, direction: Direction): number | null {
  return startFrom(record, resource, seconds, direction, ({ kind }, before) => {
    return kind === "waiting" && before?.kind !== "waiting";
  });
}

type Row = Pick<ReturnType<typeof rowOf>, "kind" | "role" | "step" | "seconds">;

function startFrom(
  record: SceneRecord,
  name: string,
  seconds: number,
  direction: Direction,
  isStart: (row: Row, before: Row | undefined) => boolean,
): number | null {
  const resource = resourceOf(record, name);
  const step = direction === "next" ? 1 : -1;
  const { rows } = resource;
  for (let i = rowNumberAt(rows, seconds) + (step === 1 ? 1 : 0); i >= 0 && i < rows.count; i += step) {
    const row = rowOf(record, resource, i);
    if (row.seconds > record.until || row.seconds < record.from) return null;
    if (step === -1 && row.seconds >= seconds) continue;
    if (isStart(row, i > 0 ? rowOf(record, resource, i - 1) : undefined)) return row.seconds;
  }
  return null;
}
