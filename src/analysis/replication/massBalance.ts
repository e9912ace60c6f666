// The mass balance of the melt of one replication, with the regrind that returns to the feed, exact in milligrams.
import type { CellRecord } from "#cell/records/cellRecord.ts";

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

/** feed = parts + flash + lost + excess + purged + in molds, and feed = virgin + regrind used, both exactly. */
export function massBalance({
  stations,
  takeaway,
  excessMilligrams: excess = 0,
  purgedMilligrams: purged,
  regrindLimit,
}: CellRecord): MassBalance {
  const sum = (of: (station: (typeof stations)[number]) => number): number =>
    stations.reduce((total, station) => total + of(station), 0);
  const feed = sum(({ shots, lostDrops, shotMilligrams }) => (shots + lostDrops) * shotMilligrams) + excess + purged;
  const made = sum(({ parts, partMilligrams }) => parts * partMilligrams);
  const lost = sum(({ lostShots, shotMilligrams }) => lostShots * shotMilligrams);
  const flash = sum(({ parts, partMilligrams, partWithFlash }) => parts * (partWithFlash - partMilligrams));
  const refusedLater = takeaway?.refused.reduce((total, { parts }) => total + parts, 0) ?? 0;
  const parts = sum(({ parts: out }) => out);
  // The mold of a part is not known after the removal, so a later reject counts with the mean mass.
  const later = parts > 0 ? Math.round((refusedLater * made) / parts) : 0;
  const rejects =
    sum(({ rejects: own, partMilligrams }) => own.reduce((total, each) => total + each.parts, 0) * partMilligrams) +
    later;
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
