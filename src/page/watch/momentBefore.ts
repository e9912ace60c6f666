// Finds the settled moment at or before a time.

/** Index of the last of these rising times that is not after `seconds`; 0 before the first. */
export function momentBefore(moments: readonly number[], seconds: number): number {
  let [low, high] = [0, moments.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (moments[middle]! <= seconds) low = middle;
    else high = middle - 1;
  }
  return low;
}
