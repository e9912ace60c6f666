// The difference of two scenarios that were run on the same random numbers, replication by replication.
import { sampleCorrelation } from "simple-statistics";
import { invariant } from "#foundation/invariant.ts";
import { CONFIDENCE, meanInterval, ROUNDING, type Interval } from "./interval.ts";

export interface PairedDifference extends Interval {
  /** Half width that holds for all comparisons of the family at once; null where there is one pair only. */
  readonly simultaneousHalfWidth: number | null;
  /** What the common random numbers achieved, -1 to 1; null where a side does not vary. */
  readonly correlation: number | null;
}

/**
 * Mean of first minus second with its t interval; by Bonferroni each of k comparisons is held to 1 - (1 - confidence)/k.
 * Source: Law, Simulation Modeling and Analysis, sections 10.2.1 and 10.3 (from memory).
 */
export function pairedDifference(
  first: readonly number[],
  second: readonly number[],
  options: { readonly comparisons?: number; readonly confidence?: number } = {},
): PairedDifference {
  invariant(first.length === second.length, "pairs belong to the same replications");
  const { comparisons = 1, confidence = CONFIDENCE } = options;
  const differences = first.map((value, replication) => apart(value, second[replication] ?? NaN));
  const simultaneous = meanInterval(differences, 1 - (1 - confidence) / comparisons);
  return {
    ...meanInterval(differences, confidence),
    simultaneousHalfWidth: simultaneous.halfWidth,
    correlation: correlation(first, second),
  };
}

/** Two roundings of the same number are no difference: they would pass for a sure one, since they hardly spread. */
function apart(one: number, other: number): number {
  const difference = one - other;
  return Math.abs(difference) <= ROUNDING * Math.max(Math.abs(one), Math.abs(other)) ? 0 : difference;
}

function correlation(first: readonly number[], second: readonly number[]): number | null {
  const varies = (values: readonly number[]) => values.some((value) => value !== values[0]);
  if (!varies(first) || !varies(second)) return null;
  // Rounding may pass 1 by a digit in the last place.
  return Math.min(1, Math.max(-1, sampleCorrelation(first.slice(), second.slice())));
}
