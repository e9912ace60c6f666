// The model against what was measured at the real cell: the difference, and whether the model explains it.
import { CELL } from "#analysis/replication/measures.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { singleRunRange, type SingleRunRange } from "#analysis/statistics/singleRunRange.ts";
import type { MeasuredSpec, Scenario } from "#scenario/scenario.ts";
import { measureOf, type MeasureSummary } from "./summarizeMeasures.ts";
import { onShiftShare } from "./totals.ts";

const secondsPerHour = 3600;

/** A smaller difference is within what counts and stopwatches give (common practice, no published source). */
const MEASURED_TOLERANCE = 0.01;

type MeasuredQuantity = keyof MeasuredSpec;

export interface MeasuredCheck {
  readonly quantity: MeasuredQuantity;
  readonly unit: "1/h" | "s";
  /** In that unit, with a calendar on shift. */
  readonly measured: number;
  readonly model: Interval;
  readonly single: SingleRunRange | null;
  /** Measured / model − 1. */
  readonly difference: number;
  /** `slower` and `faster` say what the real cell is. */
  readonly verdict: "agrees" | "slower" | "faster";
}

/** In the order shots, parts, cycle; empty where nothing was measured or nothing was made. */
export function measuredChecks(scenario: Scenario, measures: readonly MeasureSummary[]): readonly MeasuredCheck[] {
  const { measured = {} } = scenario;
  return (["shots", "parts", "cycle"] as const).flatMap((quantity) => {
    const given = measured[quantity];
    const model = given === undefined ? [] : modelValues(quantity, scenario, measures);
    return given === undefined || model.length === 0 ? [] : [checkOf(quantity, given, model)];
  });
}

function checkOf(quantity: MeasuredQuantity, given: number, values: readonly number[]): MeasuredCheck {
  const measured = quantity === "cycle" ? given : given * secondsPerHour;
  const model = meanInterval(values);
  const single = singleRunRange(values);
  const difference = measured / model.mean - 1;
  const isUsual = single !== null && measured >= single.low && measured <= single.high;
  const isSlower = quantity === "cycle" ? difference > 0 : difference < 0;
  const other = isSlower ? "slower" : "faster";
  const verdict = isUsual || Math.abs(difference) <= MEASURED_TOLERANCE ? "agrees" : other;
  return { quantity, unit: quantity === "cycle" ? "s" : "1/h", measured, model, single, difference, verdict };
}

/** One a replication. */
function modelValues(
  quantity: MeasuredQuantity,
  scenario: Scenario,
  measures: readonly MeasureSummary[],
): readonly number[] {
  if (quantity === "cycle") return cycleValues(scenario, measures);
  const measure = quantity === "shots" ? "shots per hour" : "good parts per hour";
  const share = onShiftShare(scenario);
  const values = measureOf(measures, CELL, measure)?.values ?? [];
  return values.flatMap((value) => (value === null || value === 0 ? [] : [value / share]));
}

/** Mean over the stations of each replication. */
function cycleValues({ stations, run }: Scenario, measures: readonly MeasureSummary[]): readonly number[] {
  const all = stations.map(({ name }) => measureOf(measures, name, "cycle time")?.values ?? []);
  const replications = Math.max(run.replications, ...all.map(({ length }) => length));
  return Array.from({ length: replications }, (_, i) => all.flatMap((values) => values[i] ?? []))
    .filter((cycles) => cycles.length > 0)
    .map((cycles) => meanInterval(cycles).mean);
}
