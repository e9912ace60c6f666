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
  invariant(values.length > 0, "quantiles need a value");
  // The library only reads elements.
  const rising = values as ArrayLike<number> as number[];
  const at = (p: number) => quantileSorted(rising, p);
  return { p05: at(0.05), p25: at(0.25), p50: at(0.5), p75: at(0.75), p95: at(0.95) };
}
