// The laws of a program side by side, as numbers: what the loop of the simulation reads in place of sampler objects.
import { CELLS } from "./quantileTable.ts";
import type { Sampler } from "./sampler.ts";

export interface LawTable {
  readonly samplers: readonly Sampler[];
  /** The bodies of all quantile tables, and where in it each law's begins; -1 where it has none. */
  readonly nodes: Float64Array;
  readonly firstNode: Int32Array;
  /** Of each law its location, scale, least value and mass, one after the other. */
  readonly numbers: Float64Array;
  /** Ticks of each law that belongs to a step of which no law varies; -1 where a number is drawn. */
  readonly fixedTicks: Float64Array;
}

/** Numbers of each law. */
export const LAW_SIZE = 4;

/** Steps by the laws that their cargo chooses from, one after the other. */
export function lawTable(steps: readonly (readonly Sampler[])[]): LawTable {
  const samplers = steps.flat();
  const bodies = [...new Set(samplers.map((sampler) => sampler.table))].filter((table) => table.length > 0);
  const nodes = new Float64Array(bodies.length * (CELLS + 1));
  bodies.forEach((table, i) => nodes.set(table.subarray(0, CELLS + 1), i * (CELLS + 1)));
  return {
    samplers,
    nodes,
    firstNode: Int32Array.from(samplers, ({ table }) =>
      table.length > 0 ? bodies.indexOf(table) * (CELLS + 1) : -1,
    ),
    numbers: Float64Array.from(samplers.flatMap(({ location, scale, least, mass }) => [location, scale, least, mass])),
    fixedTicks: Float64Array.from(
      steps.flatMap((laws) => {
        const isFixed = laws.every((sampler) => sampler.isFixed);
        return laws.map((sampler) => (isFixed ? sampler.ticks(0) : -1));
      }),
    ),
  };
}
