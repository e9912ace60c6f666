// The measures of one replication, for the whole cell and for each station.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { CellRecord, StationRecord } from "#cell/records/cellRecord.ts";
import { massBalance, weighedStations } from "./massBalance.ts";

export interface MeasureValue {
  /** `cell` or a station's name. */
  readonly resource: string;
  readonly measure: string;
  readonly unit: string;
  readonly value: number;
}

export const CELL = "cell";

export interface MeasureSpec {
  readonly unit: string;
  readonly meaning: string;
}

export const measureSpecs = {
  "good parts per hour": {
    unit: "1/h",
    meaning: "Parts that no check rejects, for each hour of the observed time. Without checks all parts count as good.",
  },
  "parts per hour": {
    unit: "1/h",
    meaning:
      "Parts, good or not, for each hour. A part counts at its verdict: at the removal, or with a takeaway where it is rejected or passes the last server. Of a station: parts removed from its mold.",
  },
  "melt per hour": { unit: "kg/h", meaning: "Melt that left the screw: shots, lost shots, excess melt and purge." },
  "shots per hour": { unit: "1/h", meaning: "Shots delivered to the molds, for each hour." },
  "seconds per shot": {
    unit: "s",
    meaning:
      "Observed time over the shots delivered; of the cell, over all stations. With a calendar only time on shift counts.",
  },
  "cycle time": {
    unit: "s",
    meaning: "Mean time of one station from shot to shot. With a calendar only time on shift counts.",
  },
  "reject share": { unit: "share", meaning: "Rejected parts over all parts." },
  "lost shots per hour": {
    unit: "1/h",
    meaning: "Shots that became no part because of a stop or a long hang.",
  },
  "excess melt": { unit: "kg/h", meaning: "Melt of a continuous screw that no mold takes; it goes to regrind." },
  "purged melt": { unit: "kg/h", meaning: "Melt purged at start-ups and changes; it goes to regrind." },
  "virgin resin": { unit: "kg/h", meaning: "New resin in the feed: the feed less the regrind used." },
  "regrind used": { unit: "kg/h", meaning: "Regrind that goes back into the feed, at most `regrind.limit` of it." },
  "surplus regrind": { unit: "kg/h", meaning: "Regrind above `regrind.limit`." },
} as const satisfies Readonly<Record<string, MeasureSpec>>;

type Measure = keyof typeof measureSpecs;

/** One measure for each reason; `rejects: too light` and so on. */
export const rejectsMeasure = {
  prefix: "rejects: ",
  unit: "1/h",
  meaning: "Parts rejected for the reason after the colon, for each hour.",
} as const;

/** One measure for each product where there are several; `good parts: cleaner bottle` and so on. */
export const productMeasure = {
  prefix: "good parts: ",
  unit: "1/h",
  meaning:
    "Good parts of the product after the colon, for each hour; only where the cell makes several. With a takeaway these passed the checks at the mold, because servers do not distinguish products.",
} as const;

const secondsPerHour = 3600;
const milligramsPerKilogram = 1e6;

/** A measure without a value in this replication, such as the time per shot without shots, is left out. */
export function measuresOf(record: CellRecord): readonly MeasureValue[] {
  const seconds = (record.untilTick - record.fromTick) / TICKS_PER_SECOND;
  const { stations } = record;
  const onShift = onShiftSeconds(record, record.fromTick, record.untilTick);
  return [
    ...rows(CELL, { ...production(stations, seconds, onShift), ...after(record, seconds), ...melt(record, seconds) }),
    ...rejectRows(CELL, rejectsOfCell(record), seconds),
    ...stations.flatMap((station) => [
      ...rows(station.name, { ...production([station], seconds, onShift), ...cycle(station, record) }),
      ...rejectRows(station.name, rejectsByReason([station]), seconds),
    ]),
  ];
}

/** All of it without a calendar. */
function onShiftSeconds({ off = [] }: CellRecord, from: number, until: number): number {
  const away = off.reduce((sum, { fromTick, untilTick }) => {
    return sum + Math.max(0, Math.min(until, untilTick) - Math.max(from, fromTick));
  }, 0);
  return (until - from - away) / TICKS_PER_SECOND;
}

type Rejects = StationRecord["rejects"];

/** A row for every possible reason, also where it caused no reject. */
function rejectRows(resource: string, rejects: Rejects, seconds: number): readonly MeasureValue[] {
  return rejects.map(({ reason, parts }) => ({
    resource,
    measure: `${rejectsMeasure.prefix}${reason}`,
    unit: rejectsMeasure.unit,
    value: parts / (seconds / secondsPerHour),
  }));
}

function rejectsByReason(stations: readonly StationRecord[]): Rejects {
  const found = new Map<string, number>();
  for (const { reason, parts } of stations.flatMap(({ rejects }) => rejects)) {
    found.set(reason, (found.get(reason) ?? 0) + parts);
  }
  return [...found].map(([reason, parts]) => ({ reason, parts }));
}

/** Rejects at the molds and at the servers after them; the name of a server is the reason. */
function rejectsOfCell({ stations, takeaway }: CellRecord): Rejects {
  const later = takeaway?.refused ?? [];
  return [...rejectsByReason(stations), ...later];
}

/** With servers after the molds a part is good when it has passed the last server. It counts at its verdict, so that no share exceeds 1. */
function after(record: CellRecord, seconds: number): Readonly<Partial<Record<Measure, number>>> {
  const { takeaway } = record;
  if (!takeaway) return {};
  const refused = rejectsOfCell(record).reduce((sum, { parts }) => sum + parts, 0);
  const judged = takeaway.good + refused;
  const hours = seconds / secondsPerHour;
  return {
    "good parts per hour": takeaway.good / hours,
    "parts per hour": judged / hours,
    ...(judged > 0 ? { "reject share": refused / judged } : {}),
  };
}

function rows(resource: string, values: Readonly<Partial<Record<Measure, number>>>): readonly MeasureValue[] {
  return (Object.entries(values) as [Measure, number][]).map(([measure, value]) => ({
    resource,
    measure,
    unit: measureSpecs[measure].unit,
    value,
  }));
}

/** Good parts are those that no check refuses; without checks, all removed parts. */
function production(
  stations: readonly StationRecord[],
  seconds: number,
  onShift: number,
): Readonly<Partial<Record<Measure, number>>> {
  const sum = (of: (station: StationRecord) => number): number =>
    stations.reduce((total, station) => total + of(station), 0);
  const hours = seconds / secondsPerHour;
  const shots = sum((station) => station.shots);
  const parts = sum((station) => station.parts);
  const weighed = weighedStations(stations);
  const delivered = weighed?.reduce((total, { shots: whole, lostDrops, masses }) => {
    return total + (whole + lostDrops) * masses.shot;
  }, 0);
  const rejects = rejectsByReason(stations);
  const refused = rejects.reduce((total, reason) => total + reason.parts, 0);
  const lost = sum((station) => station.lostShots);
  return {
    "good parts per hour": (parts - refused) / hours,
    "parts per hour": parts / hours,
    ...(delivered === undefined ? {} : { "melt per hour": delivered / milligramsPerKilogram / hours }),
    "shots per hour": shots / hours,
    ...(shots > 0 ? { "seconds per shot": onShift / shots } : {}),
    ...(parts > 0 ? { "reject share": refused / parts } : {}),
    ...(lost > 0 ? { "lost shots per hour": lost / hours } : {}),
  };
}

/** Excess melt of continuous extrusion and purged melt count as melt. With regrind, virgin resin and regrind have rows. */
function melt(record: CellRecord, seconds: number): Readonly<Partial<Record<Measure, number>>> {
  const balance = massBalance(record);
  if (!balance) return {};
  const { feed, excess, purged, regrindUsed, regrindSurplus, virgin } = balance;
  const perHour = (milligrams: number): number => milligrams / milligramsPerKilogram / (seconds / secondsPerHour);
  return {
    ...(excess > 0 || purged > 0 ? { "melt per hour": perHour(feed) } : {}),
    ...(record.excessMilligrams === undefined ? {} : { "excess melt": perHour(excess) }),
    ...(purged > 0 ? { "purged melt": perHour(purged) } : {}),
    ...(record.regrindLimit === undefined
      ? {}
      : {
          "virgin resin": perHour(virgin),
          "regrind used": perHour(regrindUsed),
          "surplus regrind": perHour(regrindSurplus),
        }),
  };
}

/** From the first shot to the last, so that only whole cycles count. */
function cycle(
  { shots, firstShotTick, lastShotTick }: StationRecord,
  record: CellRecord,
): Readonly<Partial<Record<Measure, number>>> {
  if (shots < 2) return {};
  return { "cycle time": onShiftSeconds(record, firstShotTick, lastShotTick) / (shots - 1) };
}
