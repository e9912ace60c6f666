// The spread of values: five quantiles.
import { quantileSorted } from "simple-statistics";
import { invariant } from "#foundation/invariant.ts";

export interface Quantiles {
  readonly p05: number;
  readonly p25: number;
  readonly p50: number;
  readonly p75: number;
  readonly p95: number;
}

/**
 * Linear interpolation between order statistics, the value at rank (n - 1) × p counted from 0.
 * Source: definition 7 of Hyndman and Fan, The American Statistician 50 (1996) 361 (from memory).
 */
export function quantiles(values: readonly number[]): Quantiles {
  // A typed array sorts by value, a list as text.
  return quantilesOfSorted(Float64Array.from(values).toSorted());
}

/** The quantiles of values in ascending order. */
export function quantilesOfSorted(values: Float64Array): Quantiles {
  return quantilesOf(values.length, (rank) => values[rank]!);
}

/** The same of so many values, each by its rank, counted from 0. */
export function quantilesOf(count: number, valueAt: (rank: number) => number): Quantiles {
  invariant(count > 0, "quantiles need a value");
  const at = (p: number): number => {
    const place = (count - 1) * p;
    const below = Math.floor(place);
    return quantileSorted([valueAt(below), valueAt(Math.ceil(place))], place - below);
  };
  return { p05: at(0.05), p25: at(0.25), p50: at(0.5), p75: at(0.75), p95: at(0.95) };
}
