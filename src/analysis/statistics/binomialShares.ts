// The probabilities of a binomial distribution.

/** P(B = k) for k from 0 to n, from the most likely k outwards, so that no power of a small number becomes 0. */
export function binomialShares(n: number, p: number): Float64Array {
  const weights = new Float64Array(n + 1);
  const mode = Math.min(n, Math.floor((n + 1) * p));
  weights[mode] = 1;
  for (let k = mode; k < n; k++) weights[k + 1] = (weights[k]! * (n - k) * p) / ((k + 1) * (1 - p));
  for (let k = mode; k > 0; k--) weights[k - 1] = (weights[k]! * k * (1 - p)) / ((n - k + 1) * p);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
