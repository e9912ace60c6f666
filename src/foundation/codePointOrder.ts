// The order of names by code point, the same on every machine and in every locale.

/** Negative, zero or positive as `left` comes before, is, or comes after `right`. */
export function codePointOrder(left: string, right: string): number {
  const one = Array.from(left, (letter) => letter.codePointAt(0) ?? 0);
  const other = Array.from(right, (letter) => letter.codePointAt(0) ?? 0);
  const shared = Math.min(one.length, other.length);
  for (let place = 0; place < shared; place += 1) {
    const difference = (one[place] ?? 0) - (other[place] ?? 0);
    if (difference !== 0) return difference;
  }
  return one.length - other.length;
}
