// The distributions of a program side by side, as numbers: what the core reads in place of sampler objects.
import { FIXED, DISTRIBUTION_SIZE, NODES } from "#core/border/numbers.ts";
import type { Sampler } from "./sampler.ts";

export interface DistributionTable {
  readonly samplers: readonly Sampler[];
  /** DISTRIBUTION_SIZE numbers for each distribution. */
  readonly numbers: Float64Array;
  /** Their quantile tables, one after the other. */
  readonly quantiles: Float64Array;
}

/** The distributions of one step, which its cargo chooses from; where it lasts until a time they only say what is usual. */
export interface StepDistributions {
  readonly samplers: readonly Sampler[];
  readonly isUntil: boolean;
}

/** What stands for the ticks where they are drawn, and where the step lasts until a time. */
const DRAWN = -1;
const UNTIL = -2;

/** The body and both tails. */
const tableSize = 3 * NODES;

/** The distributions of all steps, one after the other. */
export function distributionTable(steps: readonly StepDistributions[]): DistributionTable {
  const samplers = steps.flatMap((step) => step.samplers);
  const tables = [...new Set(samplers.map((sampler) => sampler.table))].filter((table) => table.length > 0);
  const quantiles = new Float64Array(tables.length * tableSize);
  tables.forEach((table, i) => quantiles.set(table, i * tableSize));
  const numbers = steps.flatMap((step) => {
    const isFixed = step.samplers.every((sampler) => sampler.isFixed);
    return step.samplers.flatMap((sampler) => {
      const { table, location, scale, least, mass } = sampler;
      const place = table.length > 0 ? tables.indexOf(table) * tableSize : -1;
      const ticks = step.isUntil ? UNTIL : isFixed ? sampler.exactTicks(0) : DRAWN;
      return [ticks, place, location, scale, least, mass];
    });
  });
  return { samplers, numbers: Float64Array.from(numbers), quantiles };
}

/** The same with every distribution at its mean. */
export function meanDistributions({ samplers, numbers }: DistributionTable): Float64Array {
  const means = numbers.slice();
  samplers.forEach((sampler, distribution) => {
    const place = distribution * DISTRIBUTION_SIZE + FIXED;
    if (means[place] !== UNTIL) means[place] = Math.round(sampler.meanTicks);
  });
  return means;
}
