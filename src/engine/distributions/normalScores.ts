// The scores of the normal law at the nodes of a quantile table, worked out when the program is built: 1,500 calls of a library are no way to begin.
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { CELLS, EXACT_CELLS, FINER } from "#core/border/numbers.ts";

/** Of the body the lower half, then the lower tail: the rest is these with their sign changed. */
export const numbers = [
  ...from(CELLS / FINER, CELLS / 2).map((index) => normalQuantile(index / CELLS, 0, 1)),
  ...from(EXACT_CELLS, CELLS).map((index) => normalQuantile(index / (CELLS * FINER), 0, 1)),
];

function from(first: number, last: number): readonly number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}
