// How many replications a wanted precision asks for next.
import { describe, expect, it } from "vitest";
import { isPrecise, replicationsFrom } from "#analysis/study/wantedPrecision.ts";

/** So many values, which differ by 2 around a mean of 100. */
function sampleOf(count: number) {
  const values = Array.from({ length: count }, (_, k) => (k % 2 === 0 ? 99 : 101));
  return { values, unseen: 0, reference: null, confidence: 0.95 };
}

/** No number of replications that a user waits for gives so narrow an interval. */
const hopeless = 1e-6;

describe("a wanted precision", () => {
  it("asks for at most twice the replications made, because few tell the spread badly", () => {
    expect([10, 20, 150, 999].map((made) => replicationsFrom(sampleOf(made), hopeless))).toEqual([20, 40, 300, 1998]);
  });

  it("asks for ten at first, and for none beyond 2,000", () => {
    expect([2, 4].map((made) => replicationsFrom(sampleOf(made), hopeless))).toEqual([10, 10]);
    expect([1001, 1999, 2000].map((made) => replicationsFrom(sampleOf(made), hopeless))).toEqual([2000, 2000, 2000]);
  });

  it("keeps what was made, even where that is more", () => {
    expect(replicationsFrom(sampleOf(2500), hopeless)).toBe(2500);
    expect(replicationsFrom(sampleOf(40), 0.5)).toBe(40);
  });

  it("asks for no more than it takes, and is then reached", () => {
    // By hand [C]: s = 1.0056 of 90; t(0.975, 89) = 1.987; 100 · γ/(1 + γ) with γ = 0.0018 is 0.1797: n ≥ 123.7.
    const needed = replicationsFrom(sampleOf(90), 0.0018);
    expect(Math.abs(needed - 124)).toBeLessThanOrEqual(1);
    expect(isPrecise(sampleOf(90), 0.0018)).toBe(false);
    expect(isPrecise(sampleOf(126), 0.0018)).toBe(true);
    // Nine are not enough, however little they vary.
    expect(isPrecise(sampleOf(9), 0.5)).toBe(false);
    expect(isPrecise(sampleOf(10), 0.5)).toBe(true);
  });
});
