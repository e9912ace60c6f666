// The middle of measured values, which a few slow spells of the machine do not move.

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Of the ratios of what was measured in the same round: a slow spell slows both. */
export function medianRatio(above: readonly number[], below: readonly number[]): number {
  return median(above.map((value, round) => value / below[round]!));
}
