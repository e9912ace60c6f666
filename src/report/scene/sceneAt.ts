// The scene of a cell at any time of a record.
import { waitCause } from "#analysis/study/summarizeStates.ts";
import { isOpenTo, openTo, stateNames } from "#cell/words/stateNames.ts";
import { countAt } from "./counts.ts";
import { parisonAtDie, ramMeltAt, screwMeltAt } from "./meltAt.ts";
import { moldAt } from "./moldAt.ts";
import { momentNumber } from "./moments.ts";
import { resourceOf, rowAt, shareOver, stepShare, type PlacedRow } from "./rowsOf.ts";
import type {
  Scene,
  SceneOperator,
  SceneResource,
  SceneScrew,
  SceneServer,
  SceneStation,
  SceneValve,
} from "./scene.ts";
import type { RecordedResource, RecordedServer, RecordedStation, SceneRecord } from "./sceneRecord.ts";

/** A time before or after the record gives its first or last moment. */
export function sceneAt(record: SceneRecord, time: number): Scene {
  const seconds = Math.min(record.until, Math.max(record.from, time));
  const of = (kind: RecordedResource["kind"]): readonly RecordedResource[] =>
    record.resources.filter((resource) => resource.kind === kind);
  const [screw] = of("screw");
  const [valve] = of("valve");
  return {
    seconds,
    moment: momentNumber(record, seconds),
    moments: record.moments.length,
    delivery: record.delivery,
    screw: screwAt(record, screw!, seconds),
    valve: valve ? valveAt(record, valve, seconds) : null,
    rams: of("ram").map((ram) => ({
      ...resourceAt(record, ram, seconds),
      of: ram.station,
      melt: ramMeltAt(record, ram, seconds),
    })),
    stations: record.stations.map((station) => stationAt(record, station, seconds)),
    masks: of("mask").map((mask) => resourceAt(record, mask, seconds)),
    operators: of("operator").map((operator) => operatorAt(record, operator, seconds)),
    servers: record.servers.map((server) => serverAt(record, server, seconds)),
    goodParts: goodPartsAt(record, seconds),
  };
}

function resourceAt(record: SceneRecord, resource: RecordedResource, seconds: number): SceneResource {
  return sceneResource(record, resource, rowAt(record, resource, seconds), seconds);
}

function sceneResource(
  record: SceneRecord,
  { name }: RecordedResource,
  row: PlacedRow,
  seconds: number,
): SceneResource {
  const { state, kind, step, role, station, shot, operator, until } = row;
  return {
    name,
    state,
    kind,
    step,
    role,
    cause: waitCause(state, kind, { delivery: record.spec }),
    since: row.seconds,
    until,
    progress: kind === "working" ? stepShare(row, seconds) : shareOver(row, seconds),
    station,
    shot,
    operator,
  };
}

const turning: readonly string[] = [
  stateNames.recharging,
  stateNames.extrudingParison,
  stateNames.extrudingToRegrind,
  stateNames.purging,
];

function screwAt(record: SceneRecord, resource: RecordedResource, seconds: number): SceneScrew {
  const row = rowAt(record, resource, seconds);
  return {
    ...sceneResource(record, resource, row, seconds),
    melt: screwMeltAt(record, row, seconds),
    parison: record.delivery === "continuous" ? parisonAtDie(record, seconds) : null,
    turns: turning.includes(row.state),
  };
}

function valveAt(record: SceneRecord, resource: RecordedResource, seconds: number): SceneValve {
  const own = resourceAt(record, resource, seconds);
  const open = isOpenTo(own.state) ? record.stations.find(({ name }) => openTo(name) === own.state) : undefined;
  const shiftsFor = own.state === stateNames.shifting ? own.station : null;
  return { ...own, openTo: open?.name ?? null, shiftsFor };
}

function stationAt(record: SceneRecord, station: RecordedStation, seconds: number): SceneStation {
  const resource = resourceOf(record, station.name);
  const row = rowAt(record, resource, seconds);
  const { cavities, shotGrams, counts } = station;
  return {
    ...sceneResource(record, resource, row, seconds),
    cavities,
    mold: moldAt({ record, resource, station, row, seconds }),
    shotGrams,
    shots: countAt(counts.shots, seconds),
    parts: countAt(counts.parts, seconds),
  };
}

function operatorAt(record: SceneRecord, resource: RecordedResource, seconds: number): SceneOperator {
  const row = rowAt(record, resource, seconds);
  const own = sceneResource(record, resource, row, seconds);
  const isWalking = row.state === stateNames.walking;
  const works = row.kind === "working" && !isWalking;
  return { ...own, at: works ? row.at : null, walksTo: isWalking ? row.at : null };
}

function serverAt(record: SceneRecord, { name, places, room, counts }: RecordedServer, seconds: number): SceneServer {
  const { come, taken, tooOld, passed } = counts;
  return {
    name,
    places: places.map((place) => resourceAt(record, resourceOf(record, place), seconds)),
    before: countAt(come, seconds) - countAt(taken, seconds) - countAt(tooOld, seconds),
    room,
    passed: countAt(passed, seconds),
  };
}

function goodPartsAt({ good, stations }: SceneRecord, seconds: number): number {
  if (good) return countAt(good, seconds);
  return stations.reduce((sum, { counts: { parts, rejects } }) => {
    return sum + countAt(parts, seconds) - rejects.reduce((all, each) => all + countAt(each, seconds), 0);
  }, 0);
}
