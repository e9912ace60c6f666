// Holds the range of single runs to tables of Student's t and to the expected shares below order statistics.
import { describe, expect, it } from "vitest";
import { singleRunRange } from "#analysis/statistics/singleRunRange.ts";

describe("the range of single runs", () => {
  it("with few runs is the prediction interval by Student's t", () => {
    // Five voltages of Hahn & Meeker, Statistical Intervals, 1991: mean 50.10, sd 1.31 [M]; t(0.95, 4) = 2.132 of any table [M].
    const range = singleRunRange([50.3, 48.3, 49.6, 50.4, 51.9]);
    const reach = 2.132 * 1.31 * Math.sqrt(1 + 1 / 5);
    expect(range?.method).toBe("Student's t");
    expect(range?.low).toBeCloseTo(50.1 - reach, 1);
    expect(range?.high).toBeCloseTo(50.1 + reach, 1);
  });

  it("of 19 runs is the smallest to the largest, of 39 the second to the second last", () => {
    // The chance that one more run lies between ranks r and n + 1 - r is (n + 1 - 2r) / (n + 1): 18/20 and 36/40 [M, Hahn & Meeker].
    const squares = (count: number): number[] => Array.from({ length: count }, (_, i) => (i + 1) * (i + 1));
    expect(singleRunRange(squares(19))).toEqual({ low: 1, high: 361, method: "order statistics" });
    const range = singleRunRange(squares(39).toReversed());
    expect(range?.low).toBeCloseTo(4, 9);
    expect(range?.high).toBeCloseTo(38 * 38, 9);
  });

  it("of 20 runs at the expected shares is exactly 5 % to 95 %", () => {
    // The k-th of n uniform values has the expectation k / (n + 1) [M].
    const range = singleRunRange(Array.from({ length: 20 }, (_, i) => (i + 1) / 21));
    expect(range?.low).toBeCloseTo(0.05, 12);
    expect(range?.high).toBeCloseTo(0.95, 12);
  });

  it("is never below zero, and needs two runs", () => {
    expect(singleRunRange([0, 100])?.low).toBe(0);
    expect(singleRunRange([5])).toBeNull();
  });
});
