// Good parts of the whole observed time: their mean, and the range of single runs, for the cell and for each product.
import { CELL, productMeasure, type MeasureValue } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { singleRunRange, type SingleRunRange } from "#analysis/statistics/singleRunRange.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { measureOf, type MeasureSummary } from "./summarizeMeasures.ts";

const secondsPerHour = 3600;

export interface Total {
  /** Null: all products. */
  readonly product: string | null;
  readonly parts: Interval;
  /** Null with one replication. */
  readonly single: SingleRunRange | null;
}

/** A measure for each product of each replication; none where all stations make the same product. */
export function productMeasures(
  { stations }: Scenario,
  answers: readonly Pick<ReplicationAnswer, "measures">[],
): readonly Pick<ReplicationAnswer, "measures">[] {
  const products = [...new Set(stations.map(({ product }) => product))];
  if (products.length < 2) return [];
  return answers.map(({ measures }) => ({
    measures: products.map((product): MeasureValue => {
      const makers = stations.filter((station) => station.product === product).map(({ name }) => name);
      const made = measures.filter(
        ({ resource, measure }) => makers.includes(resource) && measure === "good parts per hour",
      );
      const value = made.reduce((sum, each) => sum + each.value, 0);
      return { resource: CELL, measure: `${productMeasure.prefix}${product}`, unit: productMeasure.unit, value };
    }),
  }));
}

/** Empty without a calendar: the length of such a run is no period of production. */
export function totals({ calendar, run }: Scenario, measures: readonly MeasureSummary[]): readonly Total[] {
  const all = measureOf(measures, CELL, "good parts per hour");
  if (!calendar || !all) return [];
  const hours = observedSeconds(run) / secondsPerHour;
  const { prefix } = productMeasure;
  const products = measures.filter(({ resource, measure }) => resource === CELL && measure.startsWith(prefix));
  return [all, ...products].map((summary, i) => {
    const parts = summary.values.flatMap((value) => (value === null ? [] : [value * hours]));
    const product = i === 0 ? null : summary.measure.slice(prefix.length);
    return { product, parts: meanInterval(parts), single: singleRunRange(parts) };
  });
}

export function observedSeconds({ length, warmup }: Scenario["run"]): number {
  return length - (warmup === "auto" ? 0 : warmup);
}

/** Share of the observed time on shift; 1 without a calendar. */
export function onShiftShare({ calendar, run }: Scenario): number {
  const off = (calendar?.off ?? []).reduce((sum, { from, until }) => sum + until - from, 0);
  return 1 - off / observedSeconds(run);
}
