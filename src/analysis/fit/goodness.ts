// Distances between measured values and a fitted distribution.
import ln from "@stdlib/math-base-special-ln";

export interface Goodness {
  /** Anderson-Darling A². */
  readonly andersonDarling: number;
  /** Kolmogorov-Smirnov D. */
  readonly kolmogorovSmirnov: number;
}

/** A probability of exactly 0 or 1 comes from rounding: its logarithm must stay finite. */
const TINY = 1e-16;

/**
 * Both statistics of values in rising order. Where `isBetweenEnds`, the fitted ends are values themselves: the
 * Anderson-Darling statistic leaves them out, since it would be infinite.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, sections 1.3.5.14 and 1.3.5.16 [M].
 */
export function goodness(
  sorted: Float64Array,
  probability: (value: number) => number,
  isBetweenEnds = false,
): Goodness {
  const chances = sorted.map(probability);
  const inner = isBetweenEnds ? chances.subarray(1, -1) : chances;
  return { andersonDarling: andersonDarling(inner), kolmogorovSmirnov: kolmogorovSmirnov(chances) };
}

function andersonDarling(chances: Float64Array): number {
  const count = chances.length;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const low = Math.max(TINY, chances[i]!);
    const high = Math.max(TINY, 1 - chances[count - 1 - i]!);
    sum += (2 * i + 1) * (ln(low) + ln(high));
  }
  return -count - sum / count;
}

function kolmogorovSmirnov(chances: Float64Array): number {
  const count = chances.length;
  return chances.reduce((most, chance, i) => Math.max(most, (i + 1) / count - chance, chance - i / count), 0);
}
