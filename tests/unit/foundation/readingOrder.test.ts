// Holds the order of names to the platform's numeric collation.
import { describe, expect, it } from "vitest";
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { naturalOrder } from "#foundation/naturalOrder.ts";

// Numeric collation of ECMA-402, with the Unicode locale data of the platform.
const collator = new Intl.Collator("en", { numeric: true });

describe("the natural order of names", () => {
  it("agrees with the platform's numeric collation for names in ASCII letters", () => {
    const names = Array.from({ length: 120 }, (_, i) => `side ${(i * 37) % 121}`);
    const more = [...names, "side", "belt 2 of side 10", "belt 10 of side 2", "belt 2 of side 9"];
    expect(more.toSorted(naturalOrder)).toEqual(more.toSorted((one, other) => collator.compare(one, other)));
  });

  it("distinguishes names with equal numbers, so that the order is total", () => {
    expect(Math.sign(naturalOrder("side 01", "side 1"))).toBe(-Math.sign(naturalOrder("side 1", "side 01")));
    expect(naturalOrder("side 1", "side 1")).toBe(0);
  });
});

describe("rows in reading order", () => {
  const names = ["plasticator", "side 1", "side 10", "side 2", "valve", "left", "belt 11", "belt 9"];

  it("have numbered names sorted among their own places, and all others unchanged", () => {
    const sorted = inReadingOrder(names, (name) => name);
    expect(sorted).toEqual(["plasticator", "side 1", "side 2", "side 10", "valve", "left", "belt 9", "belt 11"]);
  });

  it("keep the rows of one name together and in their order", () => {
    const rows = names.flatMap((name) => [`${name}/b`, `${name}/a`]);
    const sorted = inReadingOrder(rows, (row) => row.split("/")[0]!);
    expect(sorted.slice(2, 8)).toEqual(["side 1/b", "side 1/a", "side 2/b", "side 2/a", "side 10/b", "side 10/a"]);
  });
});
