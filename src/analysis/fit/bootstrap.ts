// Tests and intervals by parametric bootstrap: what samples of the fitted distribution itself would give.
import exp from "@stdlib/math-base-special-exp";
import alea from "seedrandom/lib/alea.js";
import type { Family, Range } from "./family.ts";
import { goodness, type Goodness } from "./goodness.ts";

/** Values of a test and of a resample: with more every real log differs from every distribution. */
export const testedValues = 500;
/** Resamples of a test: at 5 % the level is exact. */
const TEST_DRAWS = 199;
/** Resamples of an interval: the tenth from either side is its end. */
const INTERVAL_DRAWS = 399;

export interface Tests extends Goodness {
  readonly andersonDarlingP: number;
  readonly kolmogorovSmirnovP: number;
}

/** Values as fine as the log writes them: `resolution` is 0 where it is fine enough to have no effect. */
function resampler(family: Family, parameters: readonly number[], count: number, resolution: number, seed: string) {
  const draw = alea(seed);
  const next = family.sampler(parameters, () => Math.max(draw(), Number.MIN_VALUE));
  const rounded = resolution > 0 ? () => Math.round(next() / resolution) * resolution : next;
  return (): Float64Array => {
    const values = new Float64Array(count);
    for (let i = 0; i < count; i++) values[i] = rounded();
    return values.toSorted();
  };
}

/**
 * Both statistics of at most 500 values in rising order with the share of resamples that are at least as far from their own fit:
 * parameters are fitted, so that tables for known parameters do not apply. Undefined where the values cannot be fitted. Source: Stute, Gonzáles Manteiga and Presedo
 * Quindimil, Metrika 40 (1993) 243 [M].
 */
export function testFit(family: Family, sorted: Float64Array, seed: string, resolution = 0): Tests | undefined {
  const fit = family.testFit ?? family.fit;
  const betweenEnds = family.kind === "uniform";
  const parameters = fit(sorted);
  if (parameters === undefined) return undefined;
  const found = goodness(sorted, family.probability(parameters), betweenEnds);
  const resample = resampler(family, parameters, sorted.length, resolution, `${seed}/test/${family.kind}`);
  let [farther, deeper] = [0, 0];
  for (let i = 0; i < TEST_DRAWS; i++) {
    const values = resample();
    const fitted = fit(values);
    const own = fitted && goodness(values, family.probability(fitted), betweenEnds);
    // A resample that cannot be fitted is as far away as it can be.
    if (!own || own.andersonDarling >= found.andersonDarling) farther += 1;
    if (!own || own.kolmogorovSmirnov >= found.kolmogorovSmirnov) deeper += 1;
  }
  const share = (count: number): number => (count + 1) / (TEST_DRAWS + 1);
  return { ...found, andersonDarlingP: share(farther), kolmogorovSmirnovP: share(deeper) };
}

/** Makes one sample of the fitted distribution and fits it; undefined where that fails. */
export type Refit = () => readonly number[] | undefined;

/**
 * The 95 % interval of each parameter: the error of resamples on the scale of the family's pivots. Above 500 values resamples have
 * 500, and the error is made smaller by the root of the ratio, or the ratio where errors fall that fast.
 */
export function parameterRanges(
  family: Family,
  parameters: readonly number[],
  sorted: Float64Array,
  seed: string,
): readonly Range[] {
  if (family.ranges) return family.ranges(sorted, parameters);
  const count = sorted.length;
  const size = Math.min(count, testedValues);
  const resample = resampler(family, parameters, size, 0, `${seed}/interval/${family.kind}`);
  const ratio = size / count;
  return pivotRanges(
    family,
    parameters,
    () => family.fit(resample()),
    family.isFast === true ? ratio : Math.sqrt(ratio),
  );
}

export function pivotRanges(family: Family, parameters: readonly number[], refit: Refit, shrink = 1): readonly Range[] {
  const truth = family.pivots(parameters);
  const errors = truth.map(() => new Float64Array(INTERVAL_DRAWS).fill(NaN));
  for (let i = 0; i < INTERVAL_DRAWS; i++) {
    const fitted = refit();
    if (fitted === undefined) continue;
    for (const [place, pivot] of family.pivots(fitted).entries())
      errors[place]![i] = (pivot.at - truth[place]!.at) / pivot.scale;
  }
  return truth.map(({ at, scale, isLog }, place) => {
    const sorted = errors[place]!.filter((error) => Number.isFinite(error)).toSorted();
    const end = (share: number): number => {
      const value = at - sorted[Math.round(share * (sorted.length + 1)) - 1]! * scale * shrink;
      return isLog ? exp(value) : value;
    };
    return [end(0.975), end(0.025)];
  });
}
