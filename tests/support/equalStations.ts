// Cells of equal stations named by letters, for the recursions of accumulator and continuous extrusion.
import * as fc from "fast-check";
import type { AccumulatorCell } from "./accumulatorRecursion.ts";
import type { ContinuousCell } from "./continuousRecursion.ts";
import type { Durations } from "./shotRecursion.ts";

export type Ticks = Readonly<Record<string, number>>;

export const letters = ["a", "b", "c", "d"];
export const dieZones = fc.constantFrom("exclusive" as const, "shared" as const);
export const starts = fc.constantFrom("running" as const, "cold" as const);

export const fixedTimes =
  (ticks: Ticks): Durations =>
  (_resource, step) =>
    ticks[step]!;

export const sum = (times: readonly number[]) => times.reduce((total, each) => total + each, 0);

export function accumulatorOf(
  stations: number,
  start: "running" | "cold",
  common?: { shot: number; capacity: number },
) {
  const moldSteps = ["close", "cool", "remove"];
  const each = letters.slice(0, stations).map((name) => ({ name, shot: common?.shot ?? 1, moldSteps }));
  const cell: AccumulatorCell =
    common === undefined
      ? { stations: each, start, accumulator: "per-station" }
      : { stations: each, start, accumulator: "common", capacity: common.capacity };
  return cell;
}

export function continuousOf(
  stations: number,
  start: "running" | "cold",
  fullAt: ContinuousCell["fullAt"],
  dieZone: ContinuousCell["dieZone"] = "exclusive",
): ContinuousCell {
  const steps = ["travel in", "close", "cut", "travel out", "cool", "remove"];
  return { stations: letters.slice(0, stations).map((name) => ({ name, steps })), start, fullAt, dieZone };
}
