// A drawn time made longer by so many seconds, with its spread kept.
import type { Distribution } from "#engine/distributions/distribution.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import type { DrawnTime } from "#engine/compiler/stepTable.ts";

/** A time at a drawn rate becomes longer on average: each draw in proportion. */
export function longerTime(time: DrawnTime, seconds: number): DrawnTime {
  if (seconds === 0) return time;
  const { distribution, amount, factor = 1 } = time;
  if (amount === undefined) return { ...time, distribution: shifted(distribution, seconds / factor) };
  const average = (amount / 1e6 / distributionMean(distribution)) * factor;
  return { ...time, factor: factor * (1 + seconds / average) };
}

/** Where the spread follows from the mean, it grows in proportion. */
function shifted(distribution: Distribution, by: number): Distribution {
  switch (distribution.kind) {
    case "fixed":
      return { ...distribution, value: distribution.value + by };
    case "uniform":
      return { ...distribution, min: distribution.min + by, max: distribution.max + by };
    case "triangular": {
      const { min, mode, max } = distribution;
      return { ...distribution, min: min + by, mode: mode + by, max: max + by };
    }
    case "normal":
    case "lognormal":
    case "gamma":
    case "exponential":
      return { ...distribution, mean: distribution.mean + by };
    case "weibull":
      return { ...distribution, scale: distribution.scale * (1 + by / distributionMean(distribution)) };
    case "empirical":
      return { ...distribution, values: distribution.values.map((value) => value + by) };
  }
}
