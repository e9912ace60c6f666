// Sorts the finish times of an order into bins that end at the due date or begin there.

export interface FinishBin {
  /** Seconds from the start; `from` is excluded. */
  readonly from: number;
  readonly until: number;
  readonly runs: number;
  /** By the due date; true where there is none. */
  readonly isOnTime: boolean;
}

const hour = 3600;
/** Widths that readers know, in seconds. */
const widths = [60, 300, 900, 0.5 * hour, hour, 2 * hour, 4 * hour, 8 * hour, 24 * hour, 168 * hour, 672 * hour];
const mostBins = 36;

/** Bins without runs between others are kept. */
export function finishBins(finish: readonly number[], due: number | null): readonly FinishBin[] {
  if (finish.length === 0) return [];
  const [low, high] = [Math.min(...finish), Math.max(...finish)];
  const width = widths.find((each) => (high - low) / each <= mostBins) ?? widths.at(-1)!;
  const zero = due ?? 0;
  // A run that ends at the due date is on time, so that bins exclude their start.
  const placeOf = (seconds: number): number => Math.ceil((seconds - zero) / width) - 1;
  const [first, last] = [placeOf(low), placeOf(high)];
  const counts = new Map<number, number>();
  for (const seconds of finish) counts.set(placeOf(seconds), (counts.get(placeOf(seconds)) ?? 0) + 1);
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const place = first + i;
    const from = zero + place * width;
    return { from, until: from + width, runs: counts.get(place) ?? 0, isOnTime: due === null || place < 0 };
  });
}
