// The cost of an hour of a cell, item by item: a rate of the user times an amount of the run.
import type { CostSpec, Scenario } from "#scenario/scenario.ts";
import { CELL, type MeasureValue } from "#analysis/replication/measures.ts";
import type { ResinFlow } from "#analysis/replication/replicationAnswer.ts";
import type { StationWindow } from "#analysis/window/stationWindow.ts";

/** The figures of one replication that its costs need. */
export interface CostedHour {
  readonly scenario: Pick<Scenario, "stations" | "operators">;
  readonly windows: readonly StationWindow[];
  readonly measures: readonly MeasureValue[];
  /** Null where masses are not given. */
  readonly resin: ResinFlow | null;
  /** Planned share of the time, in which operators, machine and heaters are paid. */
  readonly planned: number;
}

export interface CostRule {
  readonly item: string;
  readonly meaning: string;
  readonly rate: Exclude<keyof CostSpec, "currency" | "price" | "investment">;
  /** Units of the rate in one hour; undefined where an input is not given. */
  readonly amount: (hour: CostedHour) => number | undefined;
  /** Row of the process window that the amount comes from, with the keys that it needs. */
  readonly window?: { readonly quantity: string; readonly keys: readonly string[] };
  /** Whether the amount is a mass, so that it needs that of a part. */
  readonly isByMass?: true;
  /** Where its rate is not given, the item is not reported as missing. */
  readonly isExtra?: true;
  /** Whether the cost is 0 at any rate. */
  readonly isFree?: (hour: CostedHour) => boolean;
}

const secondsPerHour = 3600;
const driveEnergy = "drive energy per mass";
const freeAir = "free air that the compressor adds for one bottle";

/**
 * Resin is paid as virgin feed: virgin = feed − regrind used. Without regrind the melt that becomes no good part is paid as resin,
 * and all of it is surplus.
 */
export const costRules: readonly CostRule[] = [
  {
    item: "resin",
    meaning: "Virgin resin in the feed.",
    rate: "resin",
    amount: ({ resin }) => resin?.bought,
    isByMass: true,
  },
  {
    item: "surplus regrind",
    meaning: "Credit for regrind that does not go back into the feed.",
    rate: "regrindCredit",
    amount: ({ resin }) => (resin ? -resin.surplus : undefined),
    isExtra: true,
  },
  {
    item: "drive energy",
    meaning: "Electricity of the screw's drive.",
    rate: "energy",
    amount: driveEnergyOf,
    isByMass: true,
    window: { quantity: driveEnergy, keys: ["product.material", "delivery.drivePower", "delivery.plasticatingRate"] },
  },
  { item: "heating", meaning: "Heaters of barrel and head.", rate: "heating", amount: plannedSeconds },
  {
    item: "air",
    meaning: "Compressed air to blow the parts.",
    rate: "air",
    amount: (hour) => overStations(hour, freeAir, "parts per hour"),
    window: { quantity: freeAir, keys: ["product.material", "product.volume", "product.blowPressure"] },
  },
  { item: "cooling", meaning: "Cooling of the melt in the molds.", rate: "cooling", amount: melt, isByMass: true },
  {
    item: "labor",
    meaning: "Operators for each hour of planned time.",
    rate: "operator",
    amount: (hour) => hour.scenario.operators * plannedSeconds(hour),
    isFree: ({ scenario }) => scenario.operators === 0,
  },
  { item: "machine", meaning: "The cell for each hour of planned time.", rate: "machine", amount: plannedSeconds },
  {
    item: "stations",
    meaning: "Each station for each hour of planned time, on top of the machine.",
    rate: "station",
    amount: (hour) => hour.scenario.stations.length * plannedSeconds(hour),
    isExtra: true,
  },
  {
    item: "tooling",
    meaning: "Molds, for each part made.",
    rate: "tooling",
    amount: (hour) => valueOf(hour, "parts per hour"),
  },
  {
    item: "packing",
    meaning: "Packing, for each good part.",
    rate: "packing",
    amount: (hour) => valueOf(hour, "good parts per hour"),
  },
];

export function valueOf({ measures }: CostedHour, measure: string, resource = CELL): number | undefined {
  return measures.find((each) => each.resource === resource && each.measure === measure)?.value;
}

function plannedSeconds({ planned }: CostedHour): number {
  return planned * secondsPerHour;
}

/** kg/h; undefined where masses are not given. */
function melt(hour: CostedHour): number | undefined {
  return valueOf(hour, "melt per hour");
}

/** Purged and excess melt takes as much drive energy per mass as the shots. */
function driveEnergyOf(hour: CostedHour): number | undefined {
  const [ofShots, all] = [overStations(hour, driveEnergy, "melt per hour"), melt(hour)];
  const shots = hour.scenario.stations.reduce((sum, { name }) => sum + (valueOf(hour, "melt per hour", name) ?? 0), 0);
  return ofShots === undefined || all === undefined || shots === 0 ? ofShots : (ofShots * all) / shots;
}

/** A quantity of each station's process window times a measure of that station; undefined where a station has no such quantity. */
function overStations(hour: CostedHour, quantity: string, measure: string): number | undefined {
  const each = hour.scenario.stations.map(({ name }) => {
    const window = hour.windows.find(({ stations }) => stations.includes(name));
    const value = window?.rows.find((row) => row.quantity === quantity)?.value;
    const measured = valueOf(hour, measure, name);
    return value === undefined || measured === undefined ? undefined : value * measured;
  });
  return each.reduce((sum, value) => (sum === undefined || value === undefined ? undefined : sum + value), 0);
}
