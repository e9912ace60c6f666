// The distributions that a time or a rate may follow, as plain descriptions.

/**
 * One distribution of a non-negative quantity in its SI unit (seconds for times, kg/s for rates).
 *
 * - `fixed` is always the same value.
 * - `normal` is clamped at 0: a draw below 0 becomes 0.
 * - `lognormal` and `gamma` take mean and standard deviation of the quantity itself, not of its logarithm.
 * - `weibull` takes scale (in the unit of the quantity) and shape (a pure number).
 * - `empirical` takes each of its values with equal chance.
 */
export type Distribution =
  | { readonly kind: "fixed"; readonly value: number }
  | { readonly kind: "uniform"; readonly min: number; readonly max: number }
  | { readonly kind: "triangular"; readonly min: number; readonly mode: number; readonly max: number }
  | { readonly kind: "normal"; readonly mean: number; readonly sd: number }
  | { readonly kind: "lognormal"; readonly mean: number; readonly sd: number }
  | { readonly kind: "gamma"; readonly mean: number; readonly sd: number }
  | { readonly kind: "exponential"; readonly mean: number }
  | { readonly kind: "weibull"; readonly scale: number; readonly shape: number }
  | { readonly kind: "empirical"; readonly values: readonly number[] };
