// Each measure over the replications: its mean with interval, and its spread.
import { max, min } from "simple-statistics";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { quantileInterval, type QuantileInterval } from "#analysis/statistics/quantileInterval.ts";
import { quantiles, type Quantiles } from "#analysis/statistics/quantiles.ts";
import type { Controlled } from "./controlled.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export interface MeasureSummary {
  readonly resource: string;
  readonly measure: string;
  readonly unit: string;
  /** One a replication, from replication 1 on; null where that replication has no value. */
  readonly values: readonly (number | null)[];
  /** By the control of `controlled` where there is one; `sd` is always that of the values. */
  readonly interval: Interval;
  readonly controlled?: Controlled;
  readonly quantiles: Quantiles;
  readonly p05: QuantileInterval;
  readonly p95: QuantileInterval;
  readonly min: number;
  readonly max: number;
}

/** In the order of the first replication that has each measure. */
export function summarizeMeasures(answers: readonly Pick<ReplicationAnswer, "measures">[]): readonly MeasureSummary[] {
  const found = new Map<string, { resource: string; measure: string; unit: string; values: (number | null)[] }>();
  answers.forEach((answer, index) => {
    for (const { resource, measure, unit, value } of answer.measures) {
      const key = JSON.stringify([resource, measure]);
      const row = found.get(key) ?? { resource, measure, unit, values: answers.map(() => null) };
      row.values[index] = value;
      found.set(key, row);
    }
  });
  return [...found.values()].map((row) => ({ ...row, ...spread(row.values.filter((value) => value !== null)) }));
}

function spread(values: number[]): Pick<MeasureSummary, "interval" | "quantiles" | "p05" | "p95" | "min" | "max"> {
  return {
    interval: meanInterval(values),
    quantiles: quantiles(values),
    p05: quantileInterval(values, 0.05),
    p95: quantileInterval(values, 0.95),
    min: min(values),
    max: max(values),
  };
}

/** The summary of a measure of a resource; undefined where no replication has it. */
export function measureOf(
  measures: readonly MeasureSummary[],
  resource: string,
  measure: string,
): MeasureSummary | undefined {
  return measures.find((row) => row.resource === resource && row.measure === measure);
}
