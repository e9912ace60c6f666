// Natural order of names: numbers in them compare by value, so that 2 comes before 10.
import { codePointOrder } from "./codePointOrder.ts";

/** Negative, zero or positive as `left` comes before, is, or comes after `right`. */
export function naturalOrder(left: string, right: string): number {
  const partsOf = (name: string): readonly string[] => name.match(/\d+|\D+/gu) ?? [];
  const [one, other] = [partsOf(left), partsOf(right)];
  for (let place = 0; place < Math.min(one.length, other.length); place++) {
    const difference = orderOfParts(one[place]!, other[place]!);
    if (difference !== 0) return difference;
  }
  // "1" and "01" are the same number, but not the same name.
  return one.length - other.length || codePointOrder(left, right);
}

const isNumber = (part: string): boolean => /^\d/u.test(part);

function orderOfParts(one: string, other: string): number {
  return isNumber(one) && isNumber(other) ? Number(one) - Number(other) : codePointOrder(one, other);
}
