// Rows about things that are numbered, in the order of the numbers, and all else where it was.
import { naturalOrder } from "./naturalOrder.ts";

/** Names that differ in their numbers alone change places among themselves; rows of one name stay in their order. */
export function inReadingOrder<Row>(rows: readonly Row[], nameOf: (row: Row) => string): readonly Row[] {
  const names = [...new Set(rows.map(nameOf))];
  const families = new Map<string, string[]>();
  for (const name of names.toSorted(naturalOrder)) {
    families.set(familyOf(name), [...(families.get(familyOf(name)) ?? []), name]);
  }
  // Each place that a family holds goes to the next of its names.
  const ranks = new Map(names.map((name, place) => [families.get(familyOf(name))?.shift() ?? name, place]));
  return rows.toSorted((one, other) => ranks.get(nameOf(one))! - ranks.get(nameOf(other))!);
}

const familyOf = (name: string): string => name.replaceAll(/\d+/gu, "#");
