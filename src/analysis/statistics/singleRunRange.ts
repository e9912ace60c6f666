// The range in which 9 of 10 single runs lie: the spread of one more run, not the uncertainty of the mean.
import { meanInterval, tFactor } from "./interval.ts";

/** Share of single runs inside the range. */
const SINGLE_RUN_SHARE = 0.9;
/** From this number on the smallest and the largest run enclose one more run with a chance of 90 %. */
const fewestForRanks = 19;

export interface SingleRunRange {
  readonly low: number;
  readonly high: number;
  readonly method: "order statistics" | "Student's t";
}

/**
 * A prediction interval for one more run of the same kind, for quantities that are not negative. From 19 runs on it is free of any
 * distribution: the k-th of n runs in order has a share of k / (n + 1) below it on average, and ranks between runs are interpolated.
 * With fewer runs: mean ± t(0.95, n - 1) × sd × √(1 + 1/n), which takes runs as normal. Null for one run.
 * Source: Hahn & Meeker, Statistical Intervals, 1991, sections 4.8 and 5.4 (from memory).
 */
export function singleRunRange(values: readonly number[]): SingleRunRange | null {
  const { count, mean, sd } = meanInterval(values);
  if (sd === null) return null;
  if (count < fewestForRanks) {
    const reach = tFactor(SINGLE_RUN_SHARE, count) * sd * Math.sqrt(1 + 1 / count);
    return { low: Math.max(0, mean - reach), high: mean + reach, method: "Student's t" };
  }
  const rising = Float64Array.from(values).toSorted();
  const tail = 0.05;
  const rank = tail * (count + 1);
  return { low: valueAtRank(rising, rank), high: valueAtRank(rising, count + 1 - rank), method: "order statistics" };
}

/** Ranks are counted from 1. */
function valueAtRank(rising: Float64Array, rank: number): number {
  const below = Math.min(rising.length, Math.max(1, Math.floor(rank)));
  const above = Math.min(rising.length, below + 1);
  return rising[below - 1]! + (rank - below) * (rising[above - 1]! - rising[below - 1]!);
}
