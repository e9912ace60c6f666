// Where the melt of one replication went, and how much of what was no good part goes back into the feed; exact in milligrams.
import type { CellRecord, StationRecord } from "#cell/records/cellRecord.ts";

export interface MassBalance {
  /** Milligrams that left the screw: shots, broken-off drops, excess, purge. */
  readonly feed: number;
  /** Parts taken out, good or not, without their flash. */
  readonly parts: number;
  readonly flash: number;
  /** Rejects at the molds and at the servers after them. */
  readonly rejects: number;
  /** Shots lost at the mold, broken-off drops among them. */
  readonly lost: number;
  readonly excess: number;
  /** At starts and changes. */
  readonly purged: number;
  /** Shots in molds at the end less those at the beginning of the observation. */
  readonly inMolds: number;
  /** Of the feed; used ≤ limit × feed, and what is left over is surplus. */
  readonly regrindUsed: number;
  readonly regrindSurplus: number;
  readonly virgin: number;
}

type WeighedRecord = StationRecord & Required<Pick<StationRecord, "masses">>;

/** Stations with their masses; undefined where not all are given. */
export function weighedStations(stations: readonly StationRecord[]): readonly WeighedRecord[] | undefined {
  const weighed = stations.flatMap((station) => (station.masses ? [{ ...station, masses: station.masses }] : []));
  return weighed.length === stations.length ? weighed : undefined;
}

/**
 * feed = parts + flash + lost + excess + purged + in molds, and feed = virgin + regrind used, both exactly. Undefined where masses
 * are not given.
 */
export function massBalance({
  stations: all,
  takeaway,
  excessMilligrams: excess = 0,
  purgedMilligrams: purged,
  regrindLimit,
}: CellRecord): MassBalance | undefined {
  const stations = weighedStations(all);
  if (!stations) return undefined;
  const sum = (of: (station: WeighedRecord) => number): number =>
    stations.reduce((total, station) => total + of(station), 0);
  const feed = sum(({ shots, lostDrops, masses }) => (shots + lostDrops) * masses.shot) + excess + purged;
  const made = sum(({ parts, masses }) => parts * masses.part);
  const lost = sum(({ lostShots, masses }) => lostShots * masses.shot);
  const flash = sum(({ parts, masses }) => parts * (masses.partWithFlash - masses.part));
  const refusedThere = takeaway?.refused.reduce((total, { parts }) => total + parts, 0) ?? 0;
  const parts = sum(({ parts: out }) => out);
  // Which mold a part came from is not known any more after it: it counts as a mean one.
  const later = parts > 0 ? Math.round((refusedThere * made) / parts) : 0;
  const rejects =
    sum(({ rejects: own, masses }) => own.reduce((total, each) => total + each.parts, 0) * masses.part) + later;
  const back = flash + rejects + lost + excess + purged;
  const regrindUsed = regrindLimit === undefined ? 0 : Math.min(Math.floor(regrindLimit * feed), back);
  return {
    feed,
    parts: made,
    flash,
    rejects,
    lost,
    excess,
    purged,
    inMolds: feed - made - flash - lost - excess - purged,
    regrindUsed,
    regrindSurplus: back - regrindUsed,
    virgin: feed - regrindUsed,
  };
}
