// The difference of two scenarios with common random numbers, replication by replication.
import { sampleCorrelation } from "simple-statistics";
import { invariant } from "#foundation/invariant.ts";
import { CONFIDENCE, meanInterval, ROUNDING, widened, type Interval } from "./interval.ts";

export interface PairedDifference extends Interval {
  /** Half width that holds for all comparisons at once; null where there is only one pair. */
  readonly simultaneousHalfWidth: number | null;
  /** Correlation by common random numbers, -1 to 1; null where a side does not vary. */
  readonly correlation: number | null;
}

/**
 * Mean of first minus second with its t interval; by Bonferroni each of k comparisons is held to 1 - (1 - confidence)/k.
 * `unseen` is a standard error of the mean that the replications do not show.
 * Source: Law, Simulation Modeling and Analysis, sections 10.2.1 and 10.3 (from memory).
 */
export function pairedDifference(
  first: readonly number[],
  second: readonly number[],
  options: { readonly comparisons?: number; readonly confidence?: number; readonly unseen?: number } = {},
): PairedDifference {
  invariant(first.length === second.length, "pairs belong to the same replications");
  const { comparisons = 1, confidence = CONFIDENCE, unseen = 0 } = options;
  const differences = first.map((value, replication) => differenceOf(value, second[replication] ?? NaN));
  const simultaneous = widened(meanInterval(differences, 1 - (1 - confidence) / comparisons), unseen);
  return {
    ...widened(meanInterval(differences, confidence), unseen),
    simultaneousHalfWidth: simultaneous.halfWidth,
    correlation: correlation(first, second),
  };
}

/** Two roundings of the same number count as equal. With their small spread they would look like a significant difference. */
export function differenceOf(one: number, other: number): number {
  const difference = one - other;
  return Math.abs(difference) <= ROUNDING * Math.max(Math.abs(one), Math.abs(other)) ? 0 : difference;
}

function correlation(first: readonly number[], second: readonly number[]): number | null {
  const varies = (values: readonly number[]) => values.some((value) => value !== values[0]);
  if (!varies(first) || !varies(second)) return null;
  // Rounding may exceed 1 in the last digit.
  return Math.min(1, Math.max(-1, sampleCorrelation(first.slice(), second.slice())));
}
