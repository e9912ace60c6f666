// Holds computations to values printed outside the project, counts these by area, and keeps their list up to date.
import { describe, expect, test } from "vitest";
import { isLong } from "../../support/caseCount.ts";
import { halfDigit } from "../../unit/physics/printed.ts";
import type { PublishedValue } from "./publishedValue.ts";
import { countIn, publishedList, publishedValues } from "./publishedValues.ts";

/** Half of the last digit, or the stated share of the value. */
function tolerance({ printed, within }: PublishedValue): number {
  return within === undefined ? halfDigit(printed) * (1 + 1e-6) : within.share * Math.abs(Number(printed));
}

/** Two servers take many customers for a narrow interval, so that they are for the long run. */
const checked = publishedValues.filter(({ what }) => isLong || !what.startsWith("M/M/2"));

describe("published values", () => {
  test.each(checked.map((value) => [value.area, value.what, value] as const))("%s: %s", (_area, _what, value) => {
    const computed = value.computed();
    const mean = typeof computed === "number" ? computed : computed.mean;
    const noise = typeof computed === "number" ? 0 : computed.halfWidth!;
    const distance = Math.abs(mean - Number(value.printed));
    expect(distance, `${mean} is printed as ${value.printed}`).toBeLessThanOrEqual(tolerance(value) + noise);
    expect(noise).toBeLessThan(0.05 * Math.abs(Number(value.printed)));
  });

  test("are precise enough to show an error of 5 %", () => {
    const coarse = publishedValues.filter((value) => tolerance(value) >= 0.05 * Math.abs(Number(value.printed)));
    expect(coarse.map(({ what }) => what)).toEqual([]);
  });

  test("are distinct", () => {
    const places = publishedValues.map(({ area, what, source }) => `${area}: ${what}, ${source}`);
    expect(places.filter((place, index) => places.indexOf(place) !== index)).toEqual([]);
  });

  test("are at least 110, 45 of them of process physics, and stand in the list", async () => {
    expect(publishedValues.length).toBeGreaterThanOrEqual(110);
    expect(countIn("process physics")).toBeGreaterThanOrEqual(45);
    // `vitest -u` rewrites the list.
    await expect(publishedList()).toMatchFileSnapshot("publishedValues.md");
  });
});
