// A value printed in a source outside the project, with the computation that must give it.
import type { Interval } from "#analysis/statistics/interval.ts";

/** Areas in which published values are counted. */
export const areas = {
  cooling: "process physics",
  "heat and water": "process physics",
  "parison and die": "process physics",
  screw: "process physics",
  "purge and residence": "process physics",
  "air flow": "process physics",
  "compressed air": "process physics",
  clamp: "process physics",
  queues: "engine",
  "production lines": "engine",
  renewal: "engine",
  "random numbers": "engine",
  distributions: "engine",
  statistics: "analysis",
  "max-plus": "analysis",
  indicators: "analysis",
  units: "foundation",
} as const;

export type Area = keyof typeof areas;

/** R: read in the source. M: from memory of the source. Values that are computed only are never in these tables. */
export type Flag = "R" | "M";

export interface PublishedValue {
  readonly area: Area;
  readonly what: string;
  /** As printed; the computed number rounds to it. */
  readonly printed: string;
  readonly unit: string;
  readonly source: string;
  readonly flag: Flag;
  /** A number, or the interval of simulated replications, which contains the printed value and is narrower than 5 % of it. */
  readonly computed: () => number | Interval;
  /** A wider tolerance than the last digit, as a share of the value, and its reason. */
  readonly within?: { readonly share: number; readonly because: string };
}

type Row = (
  what: string,
  printed: string,
  unit: string,
  computed: PublishedValue["computed"],
  within?: PublishedValue["within"],
) => PublishedValue;

/** A maker of values that share an area, a flag and a source. */
export function valuesOf(area: Area, flag: Flag, source: string): Row {
  return (what, printed, unit, computed, within) => ({
    area,
    flag,
    source,
    what,
    printed,
    unit,
    computed,
    ...(within && { within }),
  });
}

/** Runs a simulation once for all values that need it. */
export function once<Result>(run: () => Result): () => Result {
  let kept: { readonly result: Result } | undefined;
  return () => (kept ??= { result: run() }).result;
}
