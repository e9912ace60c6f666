// Sorts rows with numbered names by number and leaves all other rows in place.
import { naturalOrder } from "./naturalOrder.ts";

/** Names that differ only in their numbers are sorted among themselves; rows of one name keep their order. */
export function inReadingOrder<Row>(rows: readonly Row[], nameOf: (row: Row) => string): readonly Row[] {
  const names = [...new Set(rows.map(nameOf))];
  const families = new Map<string, string[]>();
  for (const name of names.toSorted(naturalOrder)) {
    families.set(familyOf(name), [...(families.get(familyOf(name)) ?? []), name]);
  }
  // Each place of a family goes to the next of its names.
  const ranks = new Map(names.map((name, place) => [families.get(familyOf(name))?.shift() ?? name, place]));
  return rows.toSorted((one, other) => ranks.get(nameOf(one))! - ranks.get(nameOf(other))!);
}

const familyOf = (name: string): string => name.replaceAll(/\d+/gu, "#");
