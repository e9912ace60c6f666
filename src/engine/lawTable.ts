// The laws of a program side by side, as numbers: what the loop of the simulation reads in place of sampler objects.
import { CELLS } from "./quantileTable.ts";
import type { Sampler } from "./sampler.ts";

export interface LawTable {
  readonly samplers: readonly Sampler[];
  /** Of each law LAW_SIZE numbers, one law after the other; then the bodies of all quantile tables. */
  readonly numbers: Float64Array;
}

/** Numbers of each law, by their place after the law's first one: the ticks where none of its step's laws varies, else -1; … */
export const LAW_SIZE = 6;
export const FIXED = 0;
/** … where the body of its quantile table begins, -1 where it has none; … */
export const TABLE = 1;
/** … then those that the law's sampler has by the same names. */
export const LOCATION = 2;
export const SCALE = 3;
export const LEAST = 4;
export const MASS = 5;

const NODES = CELLS + 1;

/** Steps by the laws that their cargo chooses from, one after the other. */
export function lawTable(steps: readonly (readonly Sampler[])[]): LawTable {
  const samplers = steps.flat();
  const tables = [...new Set(samplers.map((sampler) => sampler.table))].filter((table) => table.length > 0);
  const firstTable = samplers.length * LAW_SIZE;
  const numbers = new Float64Array(firstTable + tables.length * NODES);
  tables.forEach((table, i) => numbers.set(table.subarray(0, NODES), firstTable + i * NODES));
  const laws = steps.flatMap((step) => {
    const isFixed = step.every((sampler) => sampler.isFixed);
    return step.flatMap((sampler) => {
      const { table, location, scale, least, mass } = sampler;
      const place = table.length > 0 ? firstTable + tables.indexOf(table) * NODES : -1;
      return [isFixed ? sampler.ticks(0) : -1, place, location, scale, least, mass];
    });
  });
  numbers.set(laws);
  return { samplers, numbers };
}

/** The same with every law at its mean. */
export function meanLaws({ samplers, numbers }: LawTable): Float64Array {
  const means = numbers.slice();
  samplers.forEach((sampler, law) => (means[law * LAW_SIZE + FIXED] = Math.round(sampler.meanTicks)));
  return means;
}
