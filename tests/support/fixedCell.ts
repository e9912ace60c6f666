// Scenarios of fixed times, described by a few numbers a station.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { DeliverySpec, DispatchRule, Scenario, StationSpec } from "#scenario/scenario.ts";

const fixed = (value: number): Distribution => ({ kind: "fixed", value });

/** Seconds. */
export interface FixedStation {
  readonly name?: string;
  readonly recharge: number;
  readonly drop: number;
  readonly close: number;
  readonly cool: number;
  readonly remove: number;
  readonly by?: "machine" | "operator";
  /** Travel in, cut and travel out, for continuous extrusion. */
  readonly travel?: readonly [number, number, number];
  readonly priority?: number;
}

export interface FixedCell {
  readonly stations: readonly FixedStation[];
  readonly shift: number;
  readonly dispatch?: DispatchRule;
  readonly rechargeStarts?: "valve-neutral" | "mold-closed";
  readonly operators?: number;
  readonly length?: number;
  readonly start?: "running" | "cold";
  /** A reciprocating screw if not given. */
  readonly delivery?: DeliverySpec;
}

/** Blow, vent and open take no time, so that the mold time after the drop is close + cool + remove. */
function station(given: FixedStation, number: number): StationSpec {
  return {
    name: given.name ?? `station ${String(number + 1).padStart(2, "0")}`,
    cavities: 2,
    product: "bottle",
    partMass: 0.042,
    flashMass: 0.012,
    drop: { by: "time", time: fixed(given.drop) },
    recharge: { by: "time", time: fixed(given.recharge) },
    close: fixed(given.close),
    blow: fixed(0),
    cool: fixed(given.cool),
    vent: fixed(0),
    open: fixed(0),
    remove: { time: fixed(given.remove), by: given.by ?? "machine" },
    extra: [],
    priority: given.priority ?? 1,
    ...(given.travel
      ? { travel: { in: fixed(given.travel[0]), cut: fixed(given.travel[1]), out: fixed(given.travel[2]) } }
      : {}),
  };
}

export function fixedCell(cell: FixedCell): Scenario {
  return {
    name: "fixed",
    title: "Fixed times",
    delivery: cell.delivery ?? {
      kind: "reciprocating-screw",
      rechargeStarts: cell.rechargeStarts ?? "valve-neutral",
      shotFor: "served",
    },
    valve: { shift: fixed(cell.shift), dispatch: cell.dispatch ?? "first-ready" },
    stations: cell.stations.map(station),
    operators: cell.operators ?? 0,
    run: { length: cell.length ?? 3600, replications: 1, seed: "1", warmup: 0, start: cell.start ?? "running" },
  };
}

/** Ticks of all shots of the cell, ascending. */
export function allShotTicks(record: {
  readonly stations: readonly { readonly shotTicks: readonly number[] }[];
}): number[] {
  return record.stations.flatMap((each) => each.shotTicks).toSorted((a, b) => a - b);
}
