// The measures of one replication, for the whole cell and for each station.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { CellRecord, StationRecord } from "#cell/records/cellRecord.ts";
import { massBalance } from "./massBalance.ts";

export interface MeasureValue {
  /** `cell` or a station's name. */
  readonly resource: string;
  readonly measure: string;
  readonly unit: string;
  readonly value: number;
}

export const CELL = "cell";

const measureUnits = {
  "good parts per hour": "1/h",
  "parts per hour": "1/h",
  "melt per hour": "kg/h",
  "shots per hour": "1/h",
  "seconds per shot": "s",
  "cycle time": "s",
  "reject share": "share",
  "lost shots per hour": "1/h",
  "excess melt": "kg/h",
  "purged melt": "kg/h",
  "virgin resin": "kg/h",
  "regrind used": "kg/h",
  "surplus regrind": "kg/h",
} as const;

type Measure = keyof typeof measureUnits;

const secondsPerHour = 3600;
const milligramsPerKilogram = 1e6;

/** A measure without a value in this replication, such as the time per shot without shots, is left out. */
export function measuresOf(record: CellRecord): readonly MeasureValue[] {
  const seconds = (record.untilTick - record.fromTick) / TICKS_PER_SECOND;
  const { stations } = record;
  return [
    ...rows(CELL, { ...production(stations, seconds), ...after(record, seconds), ...melt(record, seconds) }),
    ...rejectRows(CELL, rejectsOfCell(record), seconds),
    ...stations.flatMap((station) => [
      ...rows(station.name, { ...production([station], seconds), ...cycle(station) }),
      ...rejectRows(station.name, rejectsByReason([station]), seconds),
    ]),
  ];
}

type Rejects = StationRecord["rejects"];

/** A row for every possible reason, also where it caused no reject. */
function rejectRows(resource: string, rejects: Rejects, seconds: number): readonly MeasureValue[] {
  return rejects.map(({ reason, parts }) => ({
    resource,
    measure: `rejects: ${reason}`,
    unit: "1/h",
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

/** With servers after the molds a part is good when it has passed the last server. */
function after(record: CellRecord, seconds: number): Readonly<Partial<Record<Measure, number>>> {
  const { takeaway, stations } = record;
  if (!takeaway) return {};
  const made = stations.reduce((sum, { parts }) => sum + parts, 0);
  const refused = rejectsOfCell(record).reduce((sum, { parts }) => sum + parts, 0);
  return {
    "good parts per hour": takeaway.good / (seconds / secondsPerHour),
    ...(made > 0 ? { "reject share": refused / made } : {}),
  };
}

function rows(resource: string, values: Readonly<Partial<Record<Measure, number>>>): readonly MeasureValue[] {
  return (Object.entries(values) as [Measure, number][]).map(([measure, value]) => ({
    resource,
    measure,
    unit: measureUnits[measure],
    value,
  }));
}

/** Good parts are those that no check refuses; without checks, all removed parts. */
function production(stations: readonly StationRecord[], seconds: number): Readonly<Partial<Record<Measure, number>>> {
  const sum = (of: (station: StationRecord) => number): number =>
    stations.reduce((total, station) => total + of(station), 0);
  const hours = seconds / secondsPerHour;
  const shots = sum((station) => station.shots);
  const parts = sum((station) => station.parts);
  const delivered = sum(({ shots: whole, lostDrops, shotMilligrams }) => (whole + lostDrops) * shotMilligrams);
  const rejects = rejectsByReason(stations);
  const refused = rejects.reduce((total, reason) => total + reason.parts, 0);
  const lost = sum((station) => station.lostShots);
  return {
    "good parts per hour": (parts - refused) / hours,
    "parts per hour": parts / hours,
    "melt per hour": delivered / milligramsPerKilogram / hours,
    "shots per hour": shots / hours,
    ...(shots > 0 ? { "seconds per shot": seconds / shots } : {}),
    ...(parts > 0 ? { "reject share": refused / parts } : {}),
    ...(lost > 0 ? { "lost shots per hour": lost / hours } : {}),
  };
}

/** Excess melt of continuous extrusion and purged melt count as melt. With regrind, virgin resin and regrind have rows. */
function melt(record: CellRecord, seconds: number): Readonly<Partial<Record<Measure, number>>> {
  const { feed, excess, purged, regrindUsed, regrindSurplus, virgin } = massBalance(record);
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
function cycle({ shots, firstShotTick, lastShotTick }: StationRecord): Readonly<Partial<Record<Measure, number>>> {
  if (shots < 2) return {};
  return { "cycle time": (lastShotTick - firstShotTick) / (shots - 1) / TICKS_PER_SECOND };
}
