// The data of a two-station cell for the hand-written kernels: each step's stream and sampler, and the end.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { openStream, type Stream } from "../support/draws/openStream.ts";
import { TableSampler } from "../support/draws/tableSampler.ts";

export interface DrawnStep {
  /** Two steps of the same names share a stream. */
  readonly names: { readonly resource: string; readonly step: string };
  readonly stream: Stream;
  readonly sampler: TableSampler;
}

interface KernelStation {
  /** The recharge of its shot; both stations share one stream. */
  readonly recharge: DrawnStep;
  /** Drop, close, blow, cool, vent, open, remove. */
  readonly steps: readonly DrawnStep[];
}

export interface KernelCell {
  readonly stations: readonly [KernelStation, KernelStation];
  readonly toPort: DrawnStep;
  readonly toNeutral: DrawnStep;
  readonly untilTick: number;
}

/** Ticks of the deliveries up to the end, for each of the two stations. */
export type ShotTicks = readonly [number[], number[]];

/** Supports only first-ready, valve-neutral, start: running, removal by machine, and no extra steps. */
export function openKernelCell(scenario: Scenario, replication: number): KernelCell {
  const step = (resource: string, name: string, sampler: TableSampler): DrawnStep => ({
    names: { resource, step: name },
    stream: openStream(scenario.run.seed, replication, resource, name),
    sampler,
  });
  const [first, second] = scenario.stations;
  const recharge = step("plasticator", "recharge", meltSampler(first!.recharge, first!));
  const openStation = (station: StationSpec): KernelStation => ({
    recharge: { ...recharge, sampler: meltSampler(station.recharge, station) },
    steps: [
      step(station.name, "drop", meltSampler(station.drop, station)),
      ...(["close", "blow", "cool", "vent", "open"] as const).map((name) =>
        step(station.name, name, timeSampler(station[name])),
      ),
      step(station.name, "remove", timeSampler(station.remove.time)),
    ],
  });
  const shift = timeSampler(scenario.valve.shift);
  return {
    stations: [openStation(first!), openStation(second!)],
    toPort: step("valve", "shift to port", shift),
    toNeutral: step("valve", "shift to neutral", shift),
    untilTick: Math.round(scenario.run.length * TICKS_PER_SECOND),
  };
}

function timeSampler(distribution: Distribution): TableSampler {
  return new TableSampler(distribution, { unit: TICKS_PER_SECOND });
}

function meltSampler(time: TimeOrRate, station: StationSpec): TableSampler {
  if (time.by === "time") return timeSampler(time.time);
  const milligrams = Math.round(station.partMass! * 1e6) + Math.round(station.flashMass! * 1e6);
  return TableSampler.ofRate(time.rate, station.cavities * milligrams);
}
