// The triangular family by least, most likely and largest value.
import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import { linear, type Family } from "./family.ts";
import { simplexSearch } from "./simplexSearch.ts";
import { bestMode } from "./triangularLikelihood.ts";
import { triangularRanges } from "./triangularRanges.ts";
import { triangularBySpacings } from "./triangularSpacings.ts";

export const triangular: Family = {
  kind: "triangular",
  parameters: ["min", "mode", "max"],
  fit: fitTriangular,
  testFit: triangularBySpacings,
  logDensity,
  probability:
    ([min = 0, mode = 0, max = 0]) =>
    (value) => {
      if (value <= min) return 0;
      if (value >= max) return 1;
      return value < mode
        ? ((value - min) * (value - min)) / ((max - min) * (mode - min))
        : 1 - ((max - value) * (max - value)) / ((max - min) * (max - mode));
    },
  sampler: ([min = 0, mode = 0, max = 0], draw) => {
    const [range, share] = [max - min, (mode - min) / (max - min)];
    return () => {
      const u = draw();
      return u < share ? min + range * Math.sqrt(u * share) : max - range * Math.sqrt((1 - u) * (1 - share));
    };
  },
  pivots: ([min = 0, mode = 0, max = 0]) => [min, mode, max].map((value) => linear(value, max - min)),
  ranges: triangularRanges,
  distribution: ([min = 0, mode = 0, max = 0]) => ({ kind: "triangular", min, mode, max }),
};

function logDensity([min = 0, mode = 0, max = 0]: readonly number[]): (value: number) => number {
  const constant = ln(2 / (max - min));
  const [lower, upper] = [mode - min, max - mode];
  return (value) => {
    if (value < min || value > max) return -Infinity;
    if (value < mode) return constant + ln((value - min) / lower);
    return upper > 0 ? constant + ln((max - value) / upper) : constant;
  };
}

/** Values for a search of the ends; the mode is one of them, since no other place between two values is more likely. */
const MOST_VALUES = 400;

/**
 * The ends lie outside the values by amounts whose logarithms are searched; for given ends the likelihood has its maximum over the
 * mode at a value. Source: Johnson and Kotz, The American Statistician 53 (1999) 270 [M].
 */
function fitTriangular(sorted: Float64Array): readonly number[] | undefined {
  const [first, last] = [sorted[0]!, sorted.at(-1)!];
  const range = last - first;
  if (!(range > 0)) return undefined;
  const every = Math.max(1, Math.floor(sorted.length / MOST_VALUES));
  const thinned = every === 1 ? sorted : sorted.filter((_, i) => i % every === 0);
  const ends = ([a = 0, b = 0]: readonly number[]) => [first - range * exp(a), last + range * exp(b)] as const;
  const found = simplexSearch((point) => -bestMode(thinned, ends(point)).likelihood, [-2.5, -2.5], 1.5, 60);
  const [min, max] = ends(found);
  return [min, bestMode(sorted, [min, max]).mode, max];
}
