// Medians of measured values, which are robust against slow phases of the machine.

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** The median of the ratios within each round, because a slow phase affects both values. */
export function medianRatio(above: readonly number[], below: readonly number[]): number {
  return median(above.map((value, round) => value / below[round]!));
}
