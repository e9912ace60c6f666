// The interval of a chance, and the error of the decision over all looks at a growing number of runs.
import { describe, expect, it } from "vitest";
import { lookAt, lookSizes, type Verdict } from "#analysis/promise/looks.ts";
import { wilsonInterval } from "#analysis/statistics/wilsonInterval.ts";

describe("Wilson's interval of a chance", () => {
  // [M+C] Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17 (1998) 857, table I, method 3.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("of %i in %i equals the published one", (successes, runs, low, high) => {
    const found = wilsonInterval(successes, runs);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
  });

  // [C] The ends solve |k/n − p| = z √(p (1 − p)/n), z(0.975) = 1.959964.
  it("ends where the score test turns", () => {
    for (const [successes, runs] of [
      [3, 7],
      [97, 100],
      [399, 400],
    ] as const) {
      const share = successes / runs;
      for (const p of Object.values(wilsonInterval(successes, runs))) {
        expect(Math.abs(share - p) / Math.sqrt((p * (1 - p)) / runs)).toBeCloseTo(1.959964, 5);
      }
    }
  });

  it("stays within 0 and 1, and says more with more runs", () => {
    expect(wilsonInterval(50, 50).high).toBe(1);
    expect(wilsonInterval(0, 50).low).toBe(0);
    expect(wilsonInterval(500, 500).low).toBeGreaterThan(wilsonInterval(50, 50).low);
  });
});

/** [C] P(verdict) of the whole procedure at a true chance, from the exact distribution of successes that is carried from look to look. */
function chancesOf(truth: number, wanted: number): Readonly<Record<Verdict, number>> {
  const sums = { yes: 0, no: 0, undecided: 0 };
  let open = [1];
  let runs = 0;
  for (const [i, size] of lookSizes.entries()) {
    for (; runs < size; runs++) {
      const next = Array.from({ length: open.length + 1 }, () => 0);
      open.forEach((weight, k) => {
        next[k]! += weight * (1 - truth);
        next[k + 1]! += weight * truth;
      });
      open = next;
    }
    open = open.map((weight, k) => {
      const { verdict } = lookAt(k, runs, wanted, false);
      if (verdict === "undecided" && i < lookSizes.length - 1) return weight;
      sums[verdict] += weight;
      return 0;
    });
  }
  return sums;
}

describe("the decision whether a chance is reached", () => {
  it.each([0.5, 0.8, 0.95, 0.99, 0.995])(
    "at a wanted chance of %f errs in at most 5 percent of all calls",
    (wanted) => {
      const atLimit = chancesOf(wanted, wanted);
      // Just below the limit a yes is wrong, just above it a no: together they hold both errors.
      expect(atLimit.yes + atLimit.no).toBeLessThan(0.05);
      expect(atLimit.yes + atLimit.no + atLimit.undecided).toBeCloseTo(1, 9);
    },
  );

  it("is clear where the chance is far from the wanted one", () => {
    expect(chancesOf(1, 0.95).yes).toBeCloseTo(1, 9);
    expect(chancesOf(0.985, 0.95).yes).toBeGreaterThan(0.99);
    expect(chancesOf(0.9, 0.95).no).toBeGreaterThan(0.99);
    expect(chancesOf(0.3, 0.95).no).toBeCloseTo(1, 6);
  });

  it("takes the plain interval where the call gives the number of runs", () => {
    const { verdict, ...interval } = lookAt(97, 100, 0.9, true);
    expect(interval).toEqual(wilsonInterval(97, 100));
    expect(verdict).toBe("yes");
  });
});
