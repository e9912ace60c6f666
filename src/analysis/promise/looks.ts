// The sequential decision whether a chance is above or below the wanted one, in a few looks at the runs so far.
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

/** `isOnly`: the number of runs is given by the call, so that there is one look. */
export function lookAt(onTime: number, runs: number, wanted: number, isOnly: boolean): Look {
  const interval = wilsonInterval(onTime, runs, isOnly ? CONFIDENCE : LOOK_CONFIDENCE);
  return { ...interval, verdict: verdictOf(interval, wanted) };
}

function verdictOf({ low, high }: ChanceInterval, wanted: number): Verdict {
  if (low >= wanted) return "yes";
  return high < wanted ? "no" : "undecided";
}
