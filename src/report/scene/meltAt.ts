// The melt in screw, ram and heads at a time.
import { stateNames } from "#cell/words/stateNames.ts";
import { lastRow, resourceOf, rowAt, stepShare, type PlacedRow } from "./rowsOf.ts";
import type { SceneMelt } from "./scene.ts";
import type { RecordedResource, SceneRecord } from "./sceneRecord.ts";

const levelAt = (row: PlacedRow, seconds: number): number => row.low + (row.high - row.low) * stepShare(row, seconds);

function shotGramsOf({ stations }: SceneRecord, name: string | null): number | null {
  return stations.find((station) => station.name === name)?.shotGrams ?? null;
}

/** Null where the screw is not the ram. */
export function screwMeltAt(record: SceneRecord, row: PlacedRow, seconds: number): SceneMelt | null {
  if (record.delivery !== "reciprocating-screw") return null;
  return meltOf(record, levelAt(row, seconds), row.shotOf);
}

function meltOf(record: SceneRecord, share: number, station: string | null): SceneMelt {
  const shotGrams = shotGramsOf(record, station);
  const grams = shotGrams === null ? null : share * shotGrams;
  return { share, grams, shotGrams, capacityGrams: record.capacityGrams };
}

/** Of the common ram, or of a station's own. */
export function ramMeltAt(record: SceneRecord, resource: RecordedResource, seconds: number): SceneMelt {
  const row = rowAt(record, resource, seconds);
  const screw = rowAt(
    record,
    record.resources.find(({ kind }) => kind === "screw")!,
    seconds,
  );
  if (resource.station !== null)
    return meltOf(record, headShare(record, resource, row, screw, seconds), resource.station);
  const grams = (levelAt(screw, seconds) - levelAt(row, seconds)) / 1000;
  const shotGrams = shotGramsOf(record, screw.shotOf);
  const share = shotGrams === null || shotGrams === 0 ? 0 : Math.min(1, Math.max(0, grams / shotGrams));
  return { share, grams: Math.max(0, grams), shotGrams, capacityGrams: record.capacityGrams };
}

/** A head is filled while the screw recharges for it, and emptied by the drop of its station. */
function headShare(
  record: SceneRecord,
  resource: RecordedResource,
  row: PlacedRow,
  screw: PlacedRow,
  seconds: number,
): number {
  if (row.role === "mold.drop") {
    const station = rowAt(record, resourceOf(record, resource.station!), seconds);
    return station.heldRole === "mold.drop" && station.kind === "working" ? 1 - stepShare(station, seconds) : 0;
  }
  if (row.role === "screw.recharge") return screw.heldRole === "screw.recharge" ? stepShare(screw, seconds) : 1;
  const last = lastRow(record, resource, row.number, ({ role }) => role !== null);
  if (last === undefined) return row.state === stateNames.holdingShot ? 1 : 0;
  return last.role === "screw.hold" ? 1 : 0;
}

/** The share of the parison at the die of a continuous screw. */
export function parisonAtDie(record: SceneRecord, seconds: number): number {
  return levelAt(
    rowAt(
      record,
      record.resources.find(({ kind }) => kind === "screw")!,
      seconds,
    ),
    seconds,
  );
}
