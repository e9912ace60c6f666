// The laws of a program side by side, as numbers: what the loop of the simulation reads in place of sampler objects.
import { CELLS } from "./quantileTable.ts";
import type { Sampler } from "./sampler.ts";

export interface LawTable {
  readonly samplers: readonly Sampler[];
  /** Of each law LAW_SIZE numbers, one law after the other; then the bodies of all quantile tables. */
  readonly numbers: Float64Array;
}

/** The laws of one step, which its cargo chooses from; where it lasts until a time they only say what is usual. */
export interface StepLaws {
  readonly samplers: readonly Sampler[];
  readonly isUntil: boolean;
}

/** What stands for the ticks where they are drawn, and where the step lasts until a time. */
const DRAWN = -1;
const UNTIL = -2;

/** Numbers of each law, by their place after the law's first one: the ticks where none of its step's laws varies, else below 0; … */
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

/** The laws of all steps, one after the other. */
export function lawTable(steps: readonly StepLaws[]): LawTable {
  const samplers = steps.flatMap((step) => step.samplers);
  const tables = [...new Set(samplers.map((sampler) => sampler.table))].filter((table) => table.length > 0);
  const firstTable = samplers.length * LAW_SIZE;
  const numbers = new Float64Array(firstTable + tables.length * NODES);
  tables.forEach((table, i) => numbers.set(table.subarray(0, NODES), firstTable + i * NODES));
  const laws = steps.flatMap((step) => {
    const isFixed = step.samplers.every((sampler) => sampler.isFixed);
    return step.samplers.flatMap((sampler) => {
      const { table, location, scale, least, mass } = sampler;
      const place = table.length > 0 ? firstTable + tables.indexOf(table) * NODES : -1;
      const ticks = step.isUntil ? UNTIL : isFixed ? sampler.ticks(0) : DRAWN;
      return [ticks, place, location, scale, least, mass];
    });
  });
  numbers.set(laws);
  return { samplers, numbers };
}

/** The same with every law at its mean. */
export function meanLaws({ samplers, numbers }: LawTable): Float64Array {
  const means = numbers.slice();
  samplers.forEach((sampler, law) => {
    const place = law * LAW_SIZE + FIXED;
    if (means[place] !== UNTIL) means[place] = Math.round(sampler.meanTicks);
  });
  return means;
}
