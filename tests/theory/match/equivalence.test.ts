// Holds the two one-sided tests to a published worked example and to their stated error.
import alea from "seedrandom/lib/alea.js";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { describe, expect, it } from "vitest";
import { batchMeans, differenceOfMeans, equivalence, estimateOf } from "#analysis/statistics/equivalence.ts";

describe("two one-sided tests", () => {
  it("give the published result of two groups", () => {
    // Moery and Calin-Jageman 2016, study 2, in Lakens, Equivalence Tests, 2017, and the documentation of his package [R]:
    // means 5.25 and 5.22, sd 0.95 and 0.83, n 95 and 89, bounds ± 0.43 pooled sd: t(182) = -2.69, p = 0.004.
    const pooled = Math.sqrt((94 * 0.95 ** 2 + 88 * 0.83 ** 2) / 182);
    const error = pooled * Math.sqrt(1 / 95 + 1 / 89);
    const bound = 0.43 * pooled;
    expect((0.03 - bound) / error).toBeCloseTo(-2.69, 2);
    const { p, agreement } = equivalence({ mean: 0.03, error, freedom: 182 }, bound);
    expect(p).toBeCloseTo(0.004, 3);
    expect(agreement).toBe("agrees");
  });

  it("agree exactly where the 90 % interval lies within the margin", () => {
    // [C] t(0.95, 10) = 1.8125 of any table: 0.02 + 1.8125 × 0.01 = 0.038125.
    const estimate = { mean: 0.02, error: 0.01, freedom: 10 };
    expect(equivalence(estimate, 0.0382).agreement).toBe("agrees");
    expect(equivalence(estimate, 0.0381).agreement).toBe("undecided");
    expect(equivalence(estimate, 0.0018).agreement).toBe("differs");
    expect(equivalence(estimate, 0.0019).agreement).toBe("undecided");
  });

  it("take a difference of the whole margin for equal in 5 % of 4,000 samples, and none for unequal in fewer", () => {
    const next = alea("equivalence");
    let [equal, unequal] = [0, 0];
    for (let sample = 0; sample < 4000; sample++) {
      const values = Array.from({ length: 20 }, () => normalQuantile(next() || 0.5, 0.05, 0.02));
      const { agreement } = equivalence(estimateOf(values)!, 0.05);
      if (agreement === "agrees") equal += 1;
      if (agreement === "differs") unequal += 1;
    }
    // Three standard errors of 5 % in 4,000 are 1.03 %.
    expect(Math.abs(equal / 4000 - 0.05)).toBeLessThan(0.0104);
    expect(Math.abs(unequal / 4000 - 0.05)).toBeLessThan(0.0104);
  });

  it("combine two errors by Welch", () => {
    // [C] errors 3 and 4: 5; freedom 625 / (81 / 9 + 256 / 16) = 25.
    const found = differenceOfMeans({ mean: 7, error: 3, freedom: 9 }, { mean: 5, error: 4, freedom: 16 });
    expect(found).toEqual({ mean: 2, error: 5, freedom: 25 });
  });

  it("use at most 20 batches of at least 5 values", () => {
    expect(batchMeans([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])).toEqual([3, 8]);
    expect(batchMeans(Array.from({ length: 1000 }, (_, i) => i))).toHaveLength(20);
    expect(estimateOf(batchMeans([1, 2, 3]))).toBeUndefined();
  });
});
