// What an hour of a cell costs, item by item, each as a rate of the user's times an amount that the run saw.
import type { CostSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { CELL, type MeasureValue } from "./measures.ts";
import type { StationWindow } from "./stationWindow.ts";

/** One replication as its costs see it. */
export interface CostedHour {
  readonly scenario: Pick<Scenario, "stations" | "operators">;
  readonly windows: readonly StationWindow[];
  readonly measures: readonly MeasureValue[];
  /** Share of the time that the cell was planned to be busy: people, machine and heaters are paid for that. */
  readonly planned: number;
}

export interface CostRule {
  readonly item: string;
  readonly rate: Exclude<keyof CostSpec, "currency">;
  /** Units of the rate in one hour; undefined where something that it is worked out from was not given. */
  readonly amount: (hour: CostedHour) => number | undefined;
  /** Row of the process window that the amount comes from, with the keys that it needs. */
  readonly window?: { readonly quantity: string; readonly keys: readonly string[] };
  /** A line that nobody misses where its rate is not given. */
  readonly isExtra?: true;
  /** Whether there is nothing to pay, whatever the rate. */
  readonly isFree?: (hour: CostedHour) => boolean;
}

const secondsPerHour = 3600;
const driveEnergy = "drive energy per mass";
const freeAir = "free air that the compressor adds for one bottle";

/**
 * Resin is paid for as virgin feed: virgin = feed − regrind used. Where none goes back, flash and rejects are paid for as resin,
 * and all of them are surplus.
 */
export const costRules: readonly CostRule[] = [
  {
    item: "resin",
    rate: "resin",
    amount: (hour) => valueOf(hour, "virgin resin") ?? melt(hour) - (valueOf(hour, "regrind used") ?? 0),
  },
  {
    item: "surplus regrind",
    rate: "regrindCredit",
    amount: (hour) => -(valueOf(hour, "surplus regrind") ?? scrap(hour)),
    isExtra: true,
  },
  {
    item: "drive energy",
    rate: "energy",
    amount: (hour) => overStations(hour, driveEnergy, "melt per hour"),
    window: { quantity: driveEnergy, keys: ["product.material", "delivery.drivePower", "delivery.plasticatingRate"] },
  },
  { item: "heating", rate: "heating", amount: plannedSeconds },
  {
    item: "air",
    rate: "air",
    amount: (hour) => overStations(hour, freeAir, "parts per hour"),
    window: { quantity: freeAir, keys: ["product.material", "product.volume", "product.blowPressure"] },
  },
  { item: "cooling", rate: "cooling", amount: melt },
  {
    item: "labor",
    rate: "operator",
    amount: (hour) => hour.scenario.operators * plannedSeconds(hour),
    isFree: ({ scenario }) => scenario.operators === 0,
  },
  { item: "machine", rate: "machine", amount: plannedSeconds },
  { item: "tooling", rate: "tooling", amount: (hour) => valueOf(hour, "parts per hour") },
  { item: "packing", rate: "packing", amount: (hour) => valueOf(hour, "good parts per hour") },
];

export function valueOf({ measures }: CostedHour, measure: string, resource = CELL): number | undefined {
  return measures.find((each) => each.resource === resource && each.measure === measure)?.value;
}

function plannedSeconds({ planned }: CostedHour): number {
  return planned * secondsPerHour;
}

/** kg/h. */
function melt(hour: CostedHour): number {
  return valueOf(hour, "melt per hour") ?? 0;
}

/**
 * kg/h that became no good part: flash, rejects, lost shots, excess. Which mold a part came from is not known any more after it: a
 * reject found there weighs as much as the mean part.
 */
function scrap(hour: CostedHour): number {
  const { stations } = hour.scenario;
  const overAll = (of: (station: StationSpec, measure: (name: string) => number) => number): number =>
    stations.reduce((sum, each) => sum + of(each, (name) => valueOf(hour, name, each.name) ?? 0), 0);
  const parts = overAll((_, measure) => measure("parts per hour"));
  const made = overAll(({ partMass }, measure) => measure("parts per hour") * partMass);
  const refused = overAll((_, measure) => measure("parts per hour") - measure("good parts per hour"));
  const later = (valueOf(hour, "reject share") ?? 0) * parts - refused;
  const atMolds = overAll(
    ({ cavities, partMass, flashMass }, measure) =>
      measure("parts per hour") * flashMass +
      (measure("parts per hour") - measure("good parts per hour")) * partMass +
      measure("lost shots per hour") * cavities * (partMass + flashMass),
  );
  return atMolds + (parts > 0 ? (later * made) / parts : 0) + (valueOf(hour, "excess melt") ?? 0);
}

/** A quantity of each station's process window times a measure of that station; undefined where one of them lacks it. */
function overStations(hour: CostedHour, quantity: string, measure: string): number | undefined {
  const each = hour.scenario.stations.map(({ name }) => {
    const window = hour.windows.find(({ stations }) => stations.includes(name));
    const value = window?.rows.find((row) => row.quantity === quantity)?.value;
    return value === undefined ? undefined : value * (valueOf(hour, measure, name) ?? 0);
  });
  return each.reduce((sum, value) => (sum === undefined || value === undefined ? undefined : sum + value), 0);
}
