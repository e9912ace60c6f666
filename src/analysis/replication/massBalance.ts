// Where the melt of one replication went, and how much of what was no good part goes back into the feed; exact in milligrams.
import type { CellRecord } from "#cell/records/cellRecord.ts";

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
  const refusedThere = takeaway?.refused.reduce((total, { parts }) => total + parts, 0) ?? 0;
  const parts = sum(({ parts: out }) => out);
  // Which mold a part came from is not known any more after it: it counts as a mean one.
  const later = parts > 0 ? Math.round((refusedThere * made) / parts) : 0;
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
