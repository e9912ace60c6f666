// Holds counted times to the sorted list of all times [C], and beyond the exact range to the stated error.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countBelow, countNotAbove, countOf, timeAt } from "#cell/records/countedTimes.ts";
import { mostDifferent, mostError, TimeCounter } from "#cell/run/timeCounter.ts";

const counted = (ticks: readonly number[]) => {
  const counter = new TimeCounter();
  for (const each of ticks) counter.add(each);
  return counter.counted(1);
};

describe("counted times", () => {
  it("have the order statistics and counts of the sorted list", () => {
    const times = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 200 });
    fc.assert(
      fc.property(times, fc.integer({ min: -1, max: 41 }), (ticks, limit) => {
        const found = counted(ticks);
        const sorted = ticks.toSorted((a, b) => a - b);
        expect(countOf(found)).toBe(ticks.length);
        expect(sorted.map((_, rank) => timeAt(found, rank))).toEqual(sorted);
        expect(countBelow(found, limit)).toBe(sorted.filter((each) => each < limit).length);
        expect(countNotAbove(found, limit)).toBe(sorted.filter((each) => each <= limit).length);
      }),
    );
  });

  it("are none before the first one", () => {
    expect([countOf(counted([])), countBelow(counted([]), 5), countNotAbove(counted([]), 5)]).toEqual([0, 0, 0]);
  });

  it("stay exact as long as there are few different ones, however many there are", () => {
    const found = counted(Array.from({ length: 400_000 }, (_, i) => 13_050_000 + (i % 3)));
    expect([...found.seconds]).toEqual([13_050_000, 13_050_001, 13_050_002]);
    expect(countOf(found)).toBe(400_000);
  });

  it("are within the stated share of each order statistic beyond that, in little room", () => {
    // From 10 to 16 s, each different.
    const count = 2 * mostDifferent + 1;
    const ticks = Array.from({ length: count }, (_, i) => 10_000_000 + 23 * ((i * 7919) % count));
    const found = counted(ticks);
    const sorted = ticks.toSorted((a, b) => a - b);
    expect(found.seconds.length).toBeLessThan(mostDifferent / 2);
    expect(countOf(found)).toBe(count);
    const worst = sorted.reduce((most, time, rank) => Math.max(most, Math.abs(timeAt(found, rank) - time) / time), 0);
    expect(worst).toBeLessThanOrEqual(mostError);
    expect(worst).toBeGreaterThan(0);
  });
});
