// Many times in little room: each different one with how many there are.

/** In ascending order. */
export interface CountedTimes {
  /** Seconds, each once. */
  readonly seconds: Float64Array;
  /** How many of all are at most as long, at the same place. */
  readonly upTo: Float64Array;
}

export const countOf = ({ upTo }: CountedTimes): number => upTo.at(-1) ?? 0;

/** The time at a rank, counted from 0 for the shortest. */
export function timeAt({ seconds, upTo }: CountedTimes, rank: number): number {
  return seconds[placeAbove(upTo, rank)]!;
}

/** How many are shorter than so many seconds. */
export function countBelow({ seconds, upTo }: CountedTimes, limit: number): number {
  return upTo[placeOf(seconds, limit) - 1] ?? 0;
}

/** How many are not longer. */
export function countNotAbove({ seconds, upTo }: CountedTimes, limit: number): number {
  return upTo[placeAbove(seconds, limit) - 1] ?? 0;
}

/** The first place with a value that is not below the limit. */
function placeOf(rising: Float64Array, limit: number): number {
  return placeWhere(rising, (value) => value >= limit);
}

/** The first place with a value above the limit. */
function placeAbove(rising: Float64Array, limit: number): number {
  return placeWhere(rising, (value) => value > limit);
}

function placeWhere(rising: Float64Array, isFound: (value: number) => boolean): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (isFound(rising[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}
