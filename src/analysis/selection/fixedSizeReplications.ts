// Replications that a selection of fixed size needs for the same guarantee.
import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { sampleVariance } from "simple-statistics";
import { differenceOf } from "#analysis/statistics/pairedDifference.ts";
import type { PairGoal } from "./layoutPairs.ts";

/**
 * Of each layout: N = max(n0, ⌈t² S² / D²⌉) for the largest variance S² of a paired difference in the first stage, with Student's
 * t(1 − α / (k − 1), n0 − 1). Then the layout with the best mean is selected. Holds for any correlation by common random numbers.
 * Shape: as `kimNelson`; values beyond the first stage are not used. Barred layouts count among the comparisons only.
 * Source: Clark and Yang, Winter Simulation Conference 1986, 228 (from memory); the step of Nelson and Matejcik, Management Science 41
 * (1995) 1935, without their assumption on the covariances.
 */
export function fixedSizeReplications(
  values: readonly (readonly number[])[],
  { confidence, worthwhile, firstReplications: first }: Omit<PairGoal, "better">,
  barred: readonly number[] = [],
): number {
  const candidates = values.filter((_, layout) => !barred.includes(layout));
  const variances = candidates.flatMap((one, i) =>
    candidates.slice(i + 1).map((other) => {
      return sampleVariance(Array.from({ length: first }, (_, place) => differenceOf(one[place]!, other[place]!)));
    }),
  );
  if (variances.length === 0) return first;
  const t = tQuantile(1 - (1 - confidence) / (values.length - 1), first - 1);
  return Math.max(first, Math.ceil((t * t * Math.max(...variances)) / (worthwhile * worthwhile)));
}
