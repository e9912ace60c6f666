// The likelihood of a triangular distribution, and its most likely mode for given ends.
import ln from "@stdlib/math-base-special-ln";

interface Mode {
  readonly mode: number;
  readonly likelihood: number;
}

/**
 * Only a value whose share of the range lies between the shares of values below it and up to it can be the most likely mode.
 * Source: Oliver, Journal of the Operational Research Society 23 (1972) 171 [M].
 */
export function bestMode(sorted: Float64Array, [min, max]: readonly [number, number]): Mode {
  const [count, range] = [sorted.length, max - min];
  let best: Mode = { mode: sorted[0]!, likelihood: -Infinity };
  for (let rank = 0; rank < count; rank++) {
    const mode = sorted[rank]!;
    const place = ((mode - min) / range) * count;
    // The tolerance accepts a place at the limit in spite of rounding.
    if (place < rank - 1e-9 || place > rank + 1 + 1e-9) continue;
    const likelihood = triangularLikelihood(sorted, [min, mode, max]);
    if (likelihood > best.likelihood) best = { mode, likelihood };
  }
  return best;
}

/** The logarithm of a product of densities is taken only before the product becomes too small. */
export function triangularLikelihood(
  sorted: Float64Array,
  [min, mode, max]: readonly [number, number, number],
): number {
  const [lower, upper] = [mode - min, max - mode];
  let [sum, product] = [0, 1];
  for (const value of sorted) {
    product *= value < mode ? (value - min) / lower : (max - value) / upper;
    if (product > 1e-200) continue;
    sum += ln(product);
    product = 1;
  }
  return sum + ln(product) + sorted.length * ln(2 / (max - min));
}
