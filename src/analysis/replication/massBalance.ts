// The mass balance of the melt of one replication, with the regrind that returns to the feed, exact in milligrams.
import type { CellRecord, StationRecord } from "#cell/records/cellRecord.ts";

export interface MassBalance {
  /** Milligrams that left the screw: shots, broken-off drops, excess, purge. */
  readonly feed: number;
  /** Removed parts, good or not, without their flash. */
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
  /** Used ≤ limit × feed; the rest is surplus. */
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
  const refusedLater = takeaway?.refused.reduce((total, { parts }) => total + parts, 0) ?? 0;
  const parts = sum(({ parts: out }) => out);
  // The mold of a part is not known after the removal, so a later reject counts with the mean mass.
  const later = parts > 0 ? Math.round((refusedLater * made) / parts) : 0;
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
