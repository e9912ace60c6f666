// Intervals of the parameters of a triangular distribution by profile likelihood: near an end of the range resampling covers too little.
import exp from "@stdlib/math-base-special-exp";
import type { Range } from "./family.ts";
import { simplexSearch } from "./simplexSearch.ts";
import { bestMode, triangularLikelihood } from "./triangularLikelihood.ts";

/**
 * Half the 0.95 quantile of chi-squared with one degree of freedom, 1.92, is reached only slowly where a density ends in a corner:
 * it covers 91 to 96 % of samples of 100 values. This limit covers 93 to 97 % where a quarter of the values or more lie on either
 * side of the mode, and about 90 % where a twentieth does (2,000 samples each).
 */
const ALLOWED_LOSS = 2.4;
/** Widths of the estimated range in which the ends of an interval are sought. */
const REACH = 3;
const HALVINGS = 18;

/** The greatest likelihood for one value of a parameter. */
type Profile = (value: number) => number;

/**
 * The values of each parameter whose greatest likelihood is at most so much below the maximum.
 * Source: Venzon and Moolgavkar, Applied Statistics 37 (1988) 87 [M].
 */
export function triangularRanges(
  sorted: Float64Array,
  [min = 0, mode = 0, max = 0]: readonly number[],
): readonly Range[] {
  const [first, last, range] = [sorted[0]!, sorted.at(-1)!, max - min];
  const ofMin: Profile = (value) => greatest((b) => bestMode(sorted, [value, last + range * exp(b)]).likelihood, 1);
  const ofMax: Profile = (value) => greatest((b) => bestMode(sorted, [first - range * exp(b), value]).likelihood, 1);
  const ofMode: Profile = (value) => {
    const [lowest, highest] = [Math.min(first, value), Math.max(last, value)];
    return greatest(
      (a, b) => triangularLikelihood(sorted, [lowest - range * exp(a), value, highest + range * exp(b)]),
      2,
    );
  };
  const limit = Math.max(ofMin(min), ofMode(mode), ofMax(max)) - ALLOWED_LOSS;
  const far = REACH * range;
  const near = 1e-9 * range;
  return [
    [end(ofMin, min, min - far, limit), end(ofMin, min, first - near, limit)],
    [end(ofMode, mode, mode - range, limit), end(ofMode, mode, mode + range, limit)],
    [end(ofMax, max, last + near, limit), end(ofMax, max, max + far, limit)],
  ];
}

/** Over the logarithms of the distances of the other parameters from the values. */
function greatest(likelihood: (a: number, b: number) => number, free: 1 | 2): number {
  const cost = ([a = 0, b = 0]: readonly number[]): number => -likelihood(a, b);
  const start = free === 1 ? [-2.5] : [-2.5, -2.5];
  return -cost(simplexSearch(cost, start, 1.5, 40));
}

/** Where the profile falls below the limit between the estimate and a far value. */
function end(profile: Profile, estimate: number, far: number, limit: number): number {
  if (profile(far) >= limit) return far;
  let [inside, outside] = [estimate, far];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (inside + outside) / 2;
    if (profile(middle) >= limit) inside = middle;
    else outside = middle;
  }
  return (inside + outside) / 2;
}
