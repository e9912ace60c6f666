// What a family of distributions must offer to be fitted, tested and given intervals.
import type { Distribution } from "#engine/distributions/distribution.ts";

/** Of a scenario: families without a shifted form. */
export type FittedKind = Exclude<Distribution["kind"], "fixed" | "empirical">;

/** A parameter on the scale on which its error has nearly the same distribution for every true value. */
export interface Pivot {
  readonly at: number;
  /** The error is divided by this number, which the same sample gives. */
  readonly scale: number;
  /** `at` is the logarithm of the parameter. */
  readonly isLog: boolean;
}

/** The 95 % interval of a parameter. */
export type Range = readonly [low: number, high: number];

/** Parameters are those that a scenario takes, in its order. */
export interface Family {
  readonly kind: FittedKind;
  readonly parameters: readonly string[];
  /** By maximum likelihood, from values in rising order; undefined where the family cannot have such values. */
  readonly fit: (sorted: Float64Array) => readonly number[] | undefined;
  /** Instead of `fit` for the tests, where the likelihood puts an end on a value. */
  readonly testFit?: (sorted: Float64Array) => readonly number[] | undefined;
  readonly logDensity: (parameters: readonly number[]) => (value: number) => number;
  /** Probability that a value is not exceeded. */
  readonly probability: (parameters: readonly number[]) => (value: number) => number;
  /** Draws values from uniform numbers. */
  readonly sampler: (parameters: readonly number[], uniform: () => number) => () => number;
  readonly pivots: (parameters: readonly number[]) => readonly Pivot[];
  /** Where intervals from resamples cover too little. */
  readonly ranges?: (sorted: Float64Array, parameters: readonly number[]) => readonly Range[];
  /** Errors fall with the number of values instead of its square root. */
  readonly isFast?: true;
  readonly distribution: (parameters: readonly number[]) => Distribution;
}

export const linear = (at: number, scale: number): Pivot => ({ at, scale, isLog: false });

export function logLikelihood(family: Family, parameters: readonly number[], values: Float64Array): number {
  const density = family.logDensity(parameters);
  return values.reduce((sum, value) => sum + density(value), 0);
}
