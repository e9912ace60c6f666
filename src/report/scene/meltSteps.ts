// What each step of screw and ram does to the melt that they hold, for every kind of delivery.
import type { EventRecord } from "#cell/records/eventRecord.ts";
import { rechargeSeconds } from "#cell/table/shotTime.ts";
import { shotMasses } from "#cell/table/shotMass.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { MeltStep } from "./resourceTrack.ts";

/** Is asked for every event of the run in its order. */
export type MeltOf = (event: EventRecord) => MeltStep;

const noMelt: MeltStep = { low: 0, high: 0, shotOf: null };

export function meltSteps(scenario: Scenario): MeltOf {
  const { delivery } = scenario;
  if (delivery.kind === "reciprocating-screw") return screwMelt(scenario);
  if (delivery.kind === "continuous") return () => noMelt;
  return delivery.accumulator === "common" ? commonMelt(scenario) : () => noMelt;
}

/** A measure of each station's shot: its mass, or its recharge time where masses are not given. */
function shotSizes(stations: readonly StationSpec[]): ReadonlyMap<string, number> {
  const isWeighed = stations.every((station) => shotMasses(station) !== undefined);
  const sizeOf = (station: StationSpec): number =>
    isWeighed ? (shotMasses(station)?.shot ?? 0) : rechargeSeconds(station);
  return new Map(stations.map((station) => [station.name, sizeOf(station)]));
}

/** Of equal ones the first. */
function largestOf(sizes: ReadonlyMap<string, number>): string {
  const largest = Math.max(...sizes.values());
  return [...sizes].find(([, size]) => size === largest)![0];
}

/** The screw holds the shot: a recharge replaces what was delivered, or makes the shot of the next station. */
function screwMelt({ stations, delivery, run }: Scenario): MeltOf {
  const sizes = shotSizes(stations);
  const isForNext = delivery.kind === "reciprocating-screw" && delivery.shotFor === "next";
  const names = stations.map(({ name }) => name);
  const after = (station: string): string => names[(names.indexOf(station) + 1) % names.length]!;
  let shotOf = isForNext ? names[0]! : largestOf(sizes);
  let level = run.start === "running" ? 1 : 0;
  const still = (): MeltStep => ({ low: level, high: level, shotOf });
  const becomes = (next: number): MeltStep => {
    const low = level;
    level = next;
    return { low, high: level, shotOf };
  };
  return ({ owner, role, kind, station, state, step }) => {
    if (owner !== "screw") return noMelt;
    if (role === "mold.drop" && kind !== "waiting") {
      const share = (sizes.get(station!) ?? 0) / (sizes.get(shotOf) || 1);
      return becomes(isForNext ? 0 : Math.max(0, level - share));
    }
    if (role === "screw.recharge" && kind !== "waiting") {
      if (isForNext && station !== null) shotOf = after(station);
      return becomes(1);
    }
    // The first charge of a cold start is under way before any step is logged.
    return level === 0 && step === null && kind === "working" && state !== "" ? becomes(1) : still();
  };
}

/** Milligrams that the screw has put into the chamber, and that the ram has pushed out of it, since the start. */
function commonMelt({ stations, delivery, run }: Scenario): MeltOf {
  const sizes = shotSizes(stations);
  const capacity = delivery.kind === "accumulator-head" ? Math.round((delivery.shotCapacity ?? 0) * 1e6) : 0;
  let [come, gone] = [run.start === "running" ? capacity : 0, 0];
  /** Shots that are still to be replaced. */
  const due: number[] = [];
  const comes = (milligrams: number): MeltStep => ({ low: come, high: (come += milligrams), shotOf: largestOf(sizes) });
  return ({ owner, role, kind, station, step }) => {
    if (owner === "ram" && role === "mold.drop") {
      const shot = sizes.get(station!) ?? 0;
      due.push(shot);
      return { low: gone, high: (gone += shot), shotOf: station };
    }
    if (owner === "ram") return { low: gone, high: gone, shotOf: null };
    if (owner !== "screw") return noMelt;
    if (role === "screw.recharge" && kind === "working") return comes(due.shift() ?? 0);
    return come === 0 && step === null && kind === "working" ? comes(capacity) : comes(0);
  };
}
