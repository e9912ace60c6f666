// Holds each measure to values calculated by hand from a given record [C].
import { describe, expect, it } from "vitest";
import { CELL, measuresOf } from "#analysis/replication/measures.ts";
import type { CellRecord, StationRecord } from "#cell/records/cellRecord.ts";

const second = 1e6;

/** A shot every `every` seconds, of 109.2 g, with two parts. */
function station(name: string, shots: number, every: number): StationRecord {
  const shotTicks = Array.from({ length: shots }, (_, i) => (i + 1) * every * second);
  const [firstShotTick, lastShotTick] = [shotTicks[0] ?? -1, shotTicks.at(-1) ?? -1];
  const lost = { lostDrops: 0, lostShots: 0, rejects: [] };
  return {
    name,
    shots,
    parts: 2 * shots,
    masses: { shot: 109_200, part: 42_000, partWithFlash: 54_600 },
    ...lost,
    firstShotTick,
    lastShotTick,
    shotTicks,
  };
}

function valuesOf(stations: readonly StationRecord[]) {
  const record: CellRecord = {
    replication: 1,
    fromTick: 1800 * second,
    untilTick: 3600 * second,
    stations,
    stateTimes: [],
    elementTimes: [],
    longestActive: [],
    chain: [],
    stops: [],
    stopExposures: [],
    purgedMilligrams: 0,
    parisons: [],
  };
  const rows = measuresOf(record);
  return (resource: string, measure: string) =>
    rows.find((row) => row.resource === resource && row.measure === measure);
}

describe("the measures of a replication", () => {
  const of = valuesOf([station("left", 150, 12), station("right", 100, 18)]);

  it("are rates per hour of the observed half hour, not of the whole run", () => {
    expect(of("left", "shots per hour")?.value).toBe(300);
    expect(of(CELL, "shots per hour")?.value).toBe(500);
    expect(of(CELL, "good parts per hour")?.value).toBe(1000);
    expect(of(CELL, "parts per hour")?.value).toBe(1000);
  });

  it("give melt in kilograms: 500 shots of 109.2 g an hour are 54.6 kg/h", () => {
    expect(of(CELL, "melt per hour")?.value).toBeCloseTo(54.6, 12);
    expect(of(CELL, "melt per hour")?.unit).toBe("kg/h");
  });

  it("give seconds per shot from the observed time, and the cycle time from shot to shot", () => {
    expect(of(CELL, "seconds per shot")?.value).toBe(7.2);
    expect(of("left", "cycle time")?.value).toBe(12);
    expect(of("right", "cycle time")?.value).toBe(18);
    expect(of(CELL, "cycle time")).toBeUndefined();
  });

  it("omit measures that need more shots than the record has", () => {
    const few = valuesOf([station("left", 0, 12), station("right", 1, 12)]);
    expect(few("left", "seconds per shot")).toBeUndefined();
    expect(few("left", "reject share")).toBeUndefined();
    expect(few("left", "shots per hour")?.value).toBe(0);
    expect(few("right", "seconds per shot")?.value).toBe(1800);
    expect(few("right", "cycle time")).toBeUndefined();
  });
});
