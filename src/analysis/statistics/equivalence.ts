// Whether two means are equal within a margin, by two one-sided tests.
import tCdf from "@stdlib/stats-base-dists-t-cdf";
import tQuantile from "@stdlib/stats-base-dists-t-quantile";

/** An estimate with its standard error; the degrees of freedom of that error, Infinity where it is known. */
export interface Estimate {
  readonly mean: number;
  readonly error: number;
  readonly freedom: number;
}

export type Agreement = "agrees" | "differs" | "undecided";

export interface Equivalence {
  readonly difference: number;
  /** Ends of the 90 % interval, which lies within the margin exactly where both tests reject. */
  readonly low: number;
  readonly high: number;
  /** The larger probability of both tests. */
  readonly p: number;
  readonly agreement: Agreement;
}

/** Each of the two tests. */
const LEVEL = 0.05;

/**
 * `agrees`: the difference lies within ± margin, by two one-sided t tests at 5 % each. `differs`: its 90 % interval lies outside.
 * Source: Schuirmann, A comparison of the two one-sided tests procedure and the power approach, 1987 (from memory).
 */
export function equivalence({ mean, error, freedom }: Estimate, margin: number): Equivalence {
  if (error === 0) {
    const isInside = Math.abs(mean) < margin;
    return { difference: mean, low: mean, high: mean, p: isInside ? 0 : 1, agreement: isInside ? "agrees" : "differs" };
  }
  const halfWidth = tQuantile(1 - LEVEL, freedom) * error;
  const [low, high] = [mean - halfWidth, mean + halfWidth];
  const p = Math.max(tCdf(-(mean + margin) / error, freedom), tCdf((mean - margin) / error, freedom));
  const isOutside = low > margin || high < -margin;
  return { difference: mean, low, high, p, agreement: p < LEVEL ? "agrees" : isOutside ? "differs" : "undecided" };
}

/**
 * First minus second of two independent estimates.
 * Source: Welch, The generalization of Student's problem, 1947: the degrees of freedom (from memory).
 */
export function differenceOfMeans(first: Estimate, second: Estimate): Estimate {
  const [one, other] = [first.error * first.error, second.error * second.error];
  const sum = one + other;
  const spread = (one * one) / first.freedom + (other * other) / second.freedom;
  return { mean: first.mean - second.mean, error: Math.sqrt(sum), freedom: spread === 0 ? 1 : (sum * sum) / spread };
}

/** Mean of values that are independent of one another; undefined where fewer than two are known. */
export function estimateOf(values: readonly number[]): Estimate | undefined {
  if (values.length < 2) return undefined;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  const error = Math.sqrt(squares / (values.length - 1) / values.length);
  return { mean, error: error <= 1e-13 * Math.abs(mean) ? 0 : error, freedom: values.length - 1 };
}

/** Means of consecutive values of a series, nearly independent where batches are long. */
export function batchMeans(values: readonly number[], limits?: BatchLimits): readonly number[] {
  return batchMeansOf(
    values.map((sum) => ({ sum, count: 1 })),
    limits,
  );
}

interface BatchLimits {
  readonly most?: number;
  readonly least?: number;
}

/** The same of sums of so many values; a sum belongs to the batch in which it ends. */
export function batchMeansOf(
  sums: readonly { readonly sum: number; readonly count: number }[],
  { most = 20, least = 5 }: BatchLimits = {},
): readonly number[] {
  const total = sums.reduce((all, { count }) => all + count, 0);
  const batches = Math.min(most, Math.floor(total / least));
  const means: number[] = [];
  let [place, reached] = [0, 0];
  for (let batch = 1; batch <= batches; batch++) {
    let [all, number] = [0, 0];
    for (; place < sums.length && reached + sums[place]!.count <= Math.floor((batch * total) / batches); place++) {
      all += sums[place]!.sum;
      number += sums[place]!.count;
      reached += sums[place]!.count;
    }
    if (number > 0) means.push(all / number);
  }
  return means;
}

/** Half width of a two-sided 95 % interval, in standard errors. */
export function tFactorOf(freedom: number): number {
  return tQuantile(0.975, freedom);
}
