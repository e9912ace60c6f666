// What is measured of one replication, for the whole cell and for each station.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import type { CellRecord, StationRecord } from "#cell/cellRecord.ts";

export interface MeasureValue {
  /** `cell` or a station's name. */
  readonly resource: string;
  readonly measure: string;
  readonly unit: string;
  readonly value: number;
}

export const CELL = "cell";

export const measureUnits = {
  "good parts per hour": "1/h",
  "parts per hour": "1/h",
  "melt per hour": "kg/h",
  "shots per hour": "1/h",
  "seconds per shot": "s",
  "cycle time": "s",
  "reject share": "share",
  "lost shots per hour": "1/h",
} as const;

export type Measure = keyof typeof measureUnits;

const secondsPerHour = 3600;
const milligramsPerKilogram = 1e6;

/** A measure that this replication cannot tell, such as the time per shot where none was made, is left out. */
export function measuresOf(record: CellRecord): readonly MeasureValue[] {
  const seconds = (record.untilTick - record.fromTick) / TICKS_PER_SECOND;
  const { stations } = record;
  return [
    ...rows(CELL, production(stations, seconds)),
    ...stations.flatMap((station) => rows(station.name, { ...production([station], seconds), ...cycle(station) })),
  ];
}

function rows(resource: string, values: Readonly<Partial<Record<Measure, number>>>): readonly MeasureValue[] {
  return (Object.entries(values) as [Measure, number][]).map(([measure, value]) => ({
    resource,
    measure,
    unit: measureUnits[measure],
    value,
  }));
}

/** Nothing is rejected yet: every part taken out counts as good. */
function production(stations: readonly StationRecord[], seconds: number): Readonly<Partial<Record<Measure, number>>> {
  const sum = (of: (station: StationRecord) => number): number =>
    stations.reduce((total, station) => total + of(station), 0);
  const hours = seconds / secondsPerHour;
  const shots = sum((station) => station.shots);
  const parts = sum((station) => station.parts);
  const melt = sum(({ shots: whole, lostDrops, shotMilligrams }) => (whole + lostDrops) * shotMilligrams);
  const lost = sum((station) => station.lostShots);
  return {
    "good parts per hour": parts / hours,
    "parts per hour": parts / hours,
    "melt per hour": melt / milligramsPerKilogram / hours,
    "shots per hour": shots / hours,
    ...(shots > 0 ? { "seconds per shot": seconds / shots } : {}),
    ...(parts > 0 ? { "reject share": 0 } : {}),
    ...(lost > 0 ? { "lost shots per hour": lost / hours } : {}),
  };
}

/** From the first shot to the last, so that no part of a cycle counts. */
function cycle({ shots, firstShotTick, lastShotTick }: StationRecord): Readonly<Partial<Record<Measure, number>>> {
  if (shots < 2) return {};
  return { "cycle time": (lastShotTick - firstShotTick) / (shots - 1) / TICKS_PER_SECOND };
}
