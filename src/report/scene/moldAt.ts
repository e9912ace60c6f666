// The mold of a station at a time: its halves, what lies in it, the air, and how hot the wall is.
import { deliveredSag } from "#physics/parison/deliveredSag.ts";
import { parisonAtDie } from "./meltAt.ts";
import { lastRow, rowOf, stepShare, type PlacedRow } from "./rowsOf.ts";
import { rowNumberAt } from "./sceneRow.ts";
import type { SceneMold } from "./scene.ts";
import type { RecordedResource, RecordedStation, SceneRecord } from "./sceneRecord.ts";
import type { StepRole } from "#cell/words/stepNames.ts";

interface Asked {
  readonly record: SceneRecord;
  readonly resource: RecordedResource;
  readonly station: RecordedStation;
  readonly row: PlacedRow;
  readonly seconds: number;
}

export function moldAt(asked: Asked): SceneMold {
  const { record, row } = asked;
  // What waits to begin a step has done nothing of it.
  const share = row.kind === "waiting" ? 0 : stepShare(row, asked.seconds);
  const { content, air } = row;
  return {
    closed: closedShare(row, share),
    content,
    parison: content === "nothing" ? 0 : parisonShare(asked, share),
    air,
    cooling: row.heldRole === "mold.cool" ? share : null,
    hottest: content === "nothing" ? null : hottest(asked),
    sag: content === "parison" ? sag(asked) : null,
    travel: record.delivery === "continuous" ? travelShare(row, share) : null,
  };
}

function closedShare({ heldRole, isShut }: PlacedRow, share: number): number {
  if (heldRole === "mold.close") return share;
  if (heldRole === "mold.open") return 1 - share;
  return isShut ? 1 : 0;
}

function travelShare({ heldRole, kind }: PlacedRow, share: number): number {
  if (heldRole === "mold.travelIn") return kind === "waiting" ? 1 : 1 - share;
  if (heldRole === "mold.travelOut") return share;
  return heldRole === "mold.catch" || heldRole === "mold.close" || heldRole === "mold.cut" ? 0 : 1;
}

function parisonShare(asked: Asked, share: number): number {
  const { record, row, seconds } = asked;
  if (row.heldRole === "mold.drop") return share;
  if (record.delivery !== "continuous") return 1;
  if (row.heldRole === "mold.catch") return parisonAtDie(record, seconds);
  const closing = stepOfShot(asked, "mold.close");
  return closing ? parisonBefore(record, closing.seconds) : 1;
}

/** The parison that was caught at this time. */
function parisonBefore(record: SceneRecord, seconds: number): number {
  const screw = record.resources.find(({ kind }) => kind === "screw")!;
  const grown = lastRow(record, screw, rowNumberAt(screw.rows, seconds), (row) => row.seconds < seconds);
  return grown ? grown.low + (grown.high - grown.low) * (grown.until === null ? 1 : grown.to) : 1;
}

/** The row of the same shot in which it went through this step. */
function stepOfShot({ record, resource, row }: Asked, role: StepRole): PlacedRow | undefined {
  const first = lastRow(record, resource, row.number, (each) => isBefore(each, row) || each.role === role);
  return first?.role === role ? firstOfStep(record, resource, first) : undefined;
}

/** Whether a row belongs to what was in the mold before. */
const isBefore = ({ content, shot }: PlacedRow, row: PlacedRow): boolean =>
  content === "nothing" || (shot !== null && row.shot !== null && shot !== row.shot);

function firstOfStep(record: SceneRecord, resource: RecordedResource, last: PlacedRow): PlacedRow {
  const before = lastRow(record, resource, last.number, ({ heldRole }) => heldRole !== last.heldRole);
  return rowOf(record, resource, (before?.number ?? -1) + 1);
}

/** Seconds at which a step of this shot was over. */
function endOf(asked: Asked, role: StepRole): number | null {
  const { record, resource, row } = asked;
  const last = lastRow(record, resource, row.number, (each) => isBefore(each, row) || each.heldRole === role);
  return last?.heldRole === role ? last.until : null;
}

/** In the air after the mold has opened nothing is computed: the temperature at that time stays. */
function hottest(asked: Asked): number | null {
  const { cooling } = asked.station;
  if (!cooling) return null;
  const blow = stepOfShot(asked, "mold.blow");
  if (!blow) return cooling.temperatures[0]!;
  const touched = cooling.inflation === null ? endOf(asked, "mold.blow") : blow.seconds + cooling.inflation;
  const opened = stepOfShot(asked, "mold.open")?.seconds ?? Infinity;
  if (touched === null) return cooling.temperatures[0]!;
  const at = Math.max(0, Math.min(asked.seconds, opened) - touched) / cooling.step;
  const low = Math.min(Math.floor(at), cooling.temperatures.length - 2);
  const [before, after] = [cooling.temperatures[low]!, cooling.temperatures[low + 1]!];
  return before + (after - before) * Math.min(1, at - low);
}

/** While it grows the part that has left the die sags; from the closed mold on nothing does. */
function sag(asked: Asked): number | null {
  const { station, row, seconds } = asked;
  const hanging = hangingTimes(asked);
  if (!station.sag || !hanging) return null;
  const { melt, length } = station.sag;
  const delivered = Math.min(hanging.delivered ?? seconds, seconds);
  const closed = Math.min(row.heldRole === "mold.close" || hanging.closed === null ? seconds : hanging.closed, seconds);
  const share = seconds < (hanging.delivered ?? Infinity) ? parisonShare(asked, stepShare(row, seconds)) : 1;
  const grown = deliveredSag(melt, {
    length: length * Math.min(1, share),
    delivery: delivered - hanging.begun,
    hold: Math.max(0, closed - delivered),
  });
  return Number.isFinite(grown) ? grown : null;
}

interface HangingTimes {
  readonly begun: number;
  readonly delivered: number | null;
  readonly closed: number | null;
}

/** In continuous extrusion a parison grows from the catch before to its own. */
function hangingTimes(asked: Asked): HangingTimes | null {
  const { record, seconds } = asked;
  const close = stepOfShot(asked, "mold.close");
  const closed = close ? endOf(asked, "mold.close") : null;
  if (record.delivery !== "continuous") {
    const drop = stepOfShot(asked, "mold.drop");
    return drop ? { begun: drop.seconds, delivered: endOf(asked, "mold.drop"), closed } : null;
  }
  const screw = record.resources.find(({ kind }) => kind === "screw")!;
  const caught = close?.seconds ?? Infinity;
  const latest = rowNumberAt(screw.rows, Math.min(caught, seconds));
  const grown = lastRow(record, screw, latest, (row) => row.seconds < caught && row.role === "screw.extrude");
  return grown ? { begun: grown.seconds, delivered: close?.seconds ?? null, closed } : null;
}
