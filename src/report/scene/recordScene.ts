// Runs a replication and writes down its settled moments.
import { distributionMean } from "#engine/distributions/moments.ts";
import { recordedRun, type RecordedRun } from "#cell/records/recordedRun.ts";
import { sagInput } from "#cell/records/sagInput.ts";
import { stationCooling } from "#cell/layers/stationCooling.ts";
import { shotMasses } from "#cell/table/shotMass.ts";
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { goodCounts, ServerWatch, stationCounts, type Within } from "./counts.ts";
import { meltSteps } from "./meltSteps.ts";
import { packLinks, type PackedLinks } from "./packLinks.ts";
import { ResourceTrack } from "./resourceTrack.ts";
import type {
  RecordedCooling,
  RecordedResource,
  RecordedServer,
  RecordedStation,
  RecordRequest,
  SceneRecord,
} from "./sceneRecord.ts";
import { packRows, WordList } from "./sceneRow.ts";
import { setParison } from "./setParison.ts";
import { setProgress, type MeanTimes } from "./stepProgress.ts";

/** A record has no more moments: some hours of a cell. */
export const mostMoments = 50_000;

const gramsOf = (milligrams: number): number => milligrams / 1000;

/** From `from` to `until`, or to the moment at which there are `mostMoments`; no later than the end of the run. */
export function recordScene(scenario: Scenario, { replication = 1, from = 0, until }: RecordRequest): SceneRecord {
  const asked = Math.min(until, scenario.run.length);
  const run = recordedRun(scenario, replication, asked);
  const gathered = gather(scenario, run, { from, until: asked });
  const within = { from, until: gathered.until };
  const links = packLinks(run, from);
  const words = new WordList();
  const resources = recordedResources(scenario, run, gathered, links, words);
  const { delivery, valve } = scenario;
  const capacity = "shotCapacity" in delivery ? delivery.shotCapacity : undefined;
  return {
    name: scenario.name,
    replication,
    ...within,
    isCutShort: gathered.until < asked,
    moments: Float64Array.from(gathered.moments),
    delivery: deliveryOf(scenario),
    dispatch: valve.dispatch,
    spec: delivery,
    capacityGrams: capacity === undefined ? null : capacity * 1000,
    words: words.words,
    resources,
    stations: inReadingOrder(scenario.stations, ({ name }) => name).map((station) =>
      recordedStation(scenario, station, run, within),
    ),
    servers: recordedServers(gathered.servers, run, within),
    good: scenario.takeaway ? goodCounts(run, within) : null,
    links: links.links,
  };
}

function deliveryOf({ delivery }: Scenario): SceneRecord["delivery"] {
  if (delivery.kind !== "accumulator-head") return delivery.kind;
  return delivery.accumulator === "common" ? "accumulator-common" : "accumulator-head";
}

interface Gathered {
  readonly tracks: readonly ResourceTrack[];
  readonly servers: ServerWatch;
  readonly moments: readonly number[];
  readonly until: number;
}

/** Reads on behind the end, so that the states that go on there have an end. */
function gather(scenario: Scenario, run: RecordedRun, { from, until }: Within): Gathered {
  const tracks = new Map(run.plan.resources.map(({ name }) => [name, new ResourceTrack(name, from)]));
  const servers = new ServerWatch(scenario);
  const meltOf = meltSteps(scenario);
  const moments = [from];
  let end = until;
  for (const event of run.events) {
    const isNew = event.seconds > moments.at(-1)!;
    if (isNew && event.seconds <= end && moments.length === mostMoments) end = moments.at(-1)!;
    if (isNew && event.seconds <= end) moments.push(event.seconds);
    if (event.seconds > end && (event.seconds > end + run.secondsAfter || isOver(tracks, end))) break;
    servers.take(event);
    tracks.get(event.resource)!.take(event, meltOf(event));
  }
  return { tracks: [...tracks.values()].filter(({ rows }) => rows.length > 0), servers, moments, until: end };
}

/** Every resource has changed since the end. */
function isOver(tracks: ReadonlyMap<string, ResourceTrack>, end: number): boolean {
  return [...tracks.values()].every(({ rows }) => rows.length === 0 || rows.at(-1)!.seconds > end);
}

function recordedResources(
  scenario: Scenario,
  run: RecordedRun,
  { tracks }: Gathered,
  links: PackedLinks,
  words: WordList,
): readonly RecordedResource[] {
  return tracks.map((track) => {
    const { name, kind, station, group } = run.plan.resources.find((each) => each.name === track.name)!;
    track.trim();
    setProgress(track.rows, meansOf(scenario, station));
    if (kind === "screw" && scenario.delivery.kind === "continuous") setParison(track.rows);
    for (const row of track.rows) row.bound = links.boundOf(row);
    return {
      name,
      kind: kind as RecordedResource["kind"],
      station: station ?? null,
      group: group ?? null,
      rows: packRows(track.rows, words),
    };
  });
}

function meansOf({ stations }: Scenario, name: string | undefined): MeanTimes {
  const station = stations.find((each) => each.name === name);
  if (!station) return {};
  const { drop, close } = station;
  const shot = shotMasses(station)?.shot;
  const dropping = drop.by === "time" ? distributionMean(drop.time) : (shot ?? 0) / 1e6 / distributionMean(drop.rate);
  return { "mold.drop": dropping, "mold.close": distributionMean(close) };
}

function recordedStation(scenario: Scenario, station: StationSpec, run: RecordedRun, within: Within): RecordedStation {
  const { name, cavities } = station;
  const masses = shotMasses(station);
  return {
    name,
    cavities,
    shotGrams: masses ? gramsOf(masses.shot) : null,
    counts: stationCounts(run, name, within),
    cooling: recordedCooling(scenario, station),
    sag: sagInput(scenario, station) ?? null,
  };
}

const coolingSteps = 400;

/** Three times the mean time in the mold: beyond that the last temperature holds. */
function recordedCooling(scenario: Scenario, station: StationSpec): RecordedCooling | null {
  const cooling = stationCooling(scenario, station);
  if (!cooling) return null;
  const { blow, cool, vent } = station;
  const step = (3 * [blow, cool, vent].reduce((sum, time) => sum + distributionMean(time), 0)) / coolingSteps;
  const temperatures = Float64Array.from({ length: coolingSteps + 1 }, (_, i) => cooling.temperature(i * step));
  return { step, temperatures, inflation: cooling.inflation };
}

function recordedServers(watch: ServerWatch, run: RecordedRun, within: Within): readonly RecordedServer[] {
  return watch.groups.map((group) => {
    const { name, station, places, server } = group;
    const room = server.minAge === undefined ? server.buffer : server.buffer + server.places;
    return { name, station, places, room, counts: watch.countsOf(group, run, within) };
  });
}
