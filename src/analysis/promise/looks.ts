// The sequential decision whether a chance is above or below the wanted one, in a few looks at the runs so far.
import { binomialShares } from "#analysis/statistics/binomialShares.ts";
import { CONFIDENCE } from "#analysis/statistics/interval.ts";
import { wilsonInterval, type ChanceInterval } from "#analysis/statistics/wilsonInterval.ts";

/** Runs at each look. The first finds a clear no; the second a clear yes at a wanted chance of 95 %. */
export const lookSizes: readonly number[] = [20, 150, 300, 600, 1200, 2000];
/** All looks share the error of 5 % equally (Bonferroni), so that the confidence of 95 % holds for the look that decides. */
const LOOK_CONFIDENCE = 1 - (1 - CONFIDENCE) / lookSizes.length;

export type Verdict = "yes" | "no" | "undecided";

export interface Look extends ChanceInterval {
  readonly verdict: Verdict;
}

/**
 * Wilson's interval lies above or below the wanted chance, and as many or as few successes have at most the error of a side at that
 * chance. The second is exact, because Wilson's interval is too narrow for few runs near 0 and 1. `isOnly`: the number of runs is
 * given by the call, so that there is one look.
 */
export function lookAt(onTime: number, runs: number, wanted: number, isOnly: boolean): Look {
  const confidence = isOnly ? CONFIDENCE : LOOK_CONFIDENCE;
  const interval = wilsonInterval(onTime, runs, confidence);
  const error = (1 - confidence) / 2;
  const shares = binomialShares(runs, wanted);
  const sum = (from: number, until: number): number =>
    shares.subarray(from, until).reduce((all, each) => all + each, 0);
  const isAbove = interval.low >= wanted && sum(onTime, runs + 1) <= error;
  const isBelow = interval.high < wanted && sum(0, onTime + 1) <= error;
  return { ...interval, verdict: isAbove ? "yes" : isBelow ? "no" : "undecided" };
}
