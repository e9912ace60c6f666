// The number of first observations of a run that are warm-up and do not count.
import { mean } from "simple-statistics";
import { invariant } from "#foundation/invariant.ts";

const BATCH = 5;

/** With fewer batches the end of a warm-up cannot be found. */
const FEWEST_BATCHES = 10;

/** A cut that leaves fewer batches is not considered, because a few batches can be similar at random. */
const LEAST_LEFT = 5;

/** Improvements below this share of the uncut statistic are rounding. */
const ROUNDING = 1e-12;

export type WarmUp =
  | { readonly kind: "cut"; readonly batches: number; readonly observations: number }
  /** `trend`: the best cut removes more than half, so that no steady part is found. `short`: too few observations. */
  | { readonly kind: "refused"; readonly reason: "trend" | "short" };

/**
 * MSER-5: over means Z of k batches of 5, the cut d that makes Σ(Z_j − mean)²/(k − d)² over j > d least; refused beyond k/2.
 * A constant series has no cut, and of equally good cuts the shortest is taken.
 * Source: White, Simulation 69 (1997) 323; White, Cobb and Spratt, Winter Simulation Conference 2000 (from memory).
 */
export function warmUp(series: readonly number[]): WarmUp {
  const batches = batchMeans(series);
  const statistics = cutStatistics(batches);
  if (batches.length > 0 && statistics[0] === 0) return { kind: "cut", batches: 0, observations: 0 };
  if (batches.length < FEWEST_BATCHES) return { kind: "refused", reason: "short" };
  const candidates = statistics.slice(0, batches.length - LEAST_LEFT + 1);
  const least = candidates.reduce((a, b) => Math.min(a, b), Infinity) + ROUNDING * (statistics[0] ?? 0);
  const cut = candidates.findIndex((statistic) => statistic <= least);
  if (cut > batches.length / 2) return { kind: "refused", reason: "trend" };
  return { kind: "cut", batches: cut, observations: cut * BATCH };
}

/** The mean over the replications of each observation that all of them have, for one cut of all replications. */
export function averagedSeries(replications: readonly (readonly number[])[]): readonly number[] {
  invariant(replications.length > 0, "an average needs a replication");
  const shared = Math.min(...replications.map((series) => series.length));
  return Array.from({ length: shared }, (_, index) => mean(replications.map((series) => series[index] ?? NaN)));
}

/** Differences from the last value of the series, so that a constant end gives exact zeros; an incomplete last batch is left out. */
function batchMeans(series: readonly number[]): readonly number[] {
  const last = series.at(-1) ?? 0;
  return Array.from({ length: Math.floor(series.length / BATCH) }, (_, batch) => {
    const values = series.slice(batch * BATCH, (batch + 1) * BATCH);
    return mean(values.map((value) => value - last));
  });
}

/** The statistic of every cut, from the end backwards by Welford's recurrence: one pass without loss of digits. */
function cutStatistics(batches: readonly number[]): readonly number[] {
  const statistics: number[] = [];
  let center = 0;
  let squares = 0;
  let left = 0;
  for (const value of batches.toReversed()) {
    left += 1;
    const distance = value - center;
    center += distance / left;
    squares += distance * (value - center);
    statistics.push(squares / (left * left));
  }
  return statistics.toReversed();
}
