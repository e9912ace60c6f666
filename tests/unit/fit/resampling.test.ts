// Distances of values from a distribution, tests and intervals from resamples, and the search of a least value; all by hand.
import alea from "seedrandom/lib/alea.js";
import { describe, expect, it } from "vitest";
import { parameterRanges, pivotRanges, testFit } from "#analysis/fit/bootstrap.ts";
import type { Family } from "#analysis/fit/family.ts";
import { goodness } from "#analysis/fit/goodness.ts";
import { normal, uniform } from "#analysis/fit/plainFamilies.ts";
import { simplexSearch } from "#analysis/fit/simplexSearch.ts";

const itself = (value: number) => value;

describe("the distance of values from a distribution", () => {
  // Of 0.25 and 0.75: A² = −2 − (2 ln 0.25 + 6 ln 0.75) / 2, and D = 0.5 − 0.25.
  const squared = -2 - Math.log(0.25) - 3 * Math.log(0.75);

  it("is that of the formulas", () => {
    const found = goodness(Float64Array.of(0.25, 0.75), itself);
    expect(found.andersonDarling).toBeCloseTo(squared, 12);
    expect(found.kolmogorovSmirnov).toBe(0.25);
    // The largest step below a value, 0.9 − 0, and the largest above one, 1 − 0.1.
    expect(goodness(Float64Array.of(0.9, 0.95), itself).kolmogorovSmirnov).toBeCloseTo(0.9, 12);
    expect(goodness(Float64Array.of(0.05, 0.1), itself).kolmogorovSmirnov).toBeCloseTo(0.9, 12);
  });

  it("leaves out the fitted ends in A² alone", () => {
    const found = goodness(Float64Array.of(0, 0.25, 0.75, 1), itself, true);
    expect(found.andersonDarling).toBeCloseTo(squared, 12);
    expect(found.kolmogorovSmirnov).toBe(0.25);
  });

  it("is finite at a probability of 0 and 1", () => {
    // One value at 0: −1 − ln 1e-16 − ln 1.
    expect(goodness(Float64Array.of(0), itself).andersonDarling).toBeCloseTo(-1 + 16 * Math.LN10, 9);
    expect(goodness(Float64Array.of(1), itself).andersonDarling).toBeCloseTo(-1 + 16 * Math.LN10, 9);
  });
});

describe("a test by resamples", () => {
  const sorted = Float64Array.of(0.1, 0.2, 0.4, 0.8);
  /** Known to be uniform between 0 and 1, so that the distance is of the values themselves. */
  const known = (drawn: readonly number[], fit: Family["fit"] = () => [0, 1]): Family => {
    let place = 0;
    return { ...normal, fit, probability: () => itself, sampler: () => () => drawn[place++ % drawn.length]! };
  };
  const chances = (family: Family, resolution?: number) => {
    const found = testFit(family, sorted, "test", resolution)!;
    return [found.andersonDarlingP, found.kolmogorovSmirnovP];
  };

  it("gives the share of 199 resamples that are as far away or farther, and one more", () => {
    expect(chances(known([0.8, 0.1, 0.4, 0.2]))).toEqual([1, 1]);
    expect(chances(known([0.125, 0.375, 0.625, 0.875]))).toEqual([1 / 200, 1 / 200]);
    expect(chances(known([0.99, 0.995, 0.98, 0.97]))).toEqual([1, 1]);
    // Every second of 199 is farther: 99 of them behind the first near one.
    const inTurn = [0.125, 0.375, 0.625, 0.875, 0.99, 0.995, 0.98, 0.97];
    expect(chances(known(inTurn))).toEqual([100 / 200, 100 / 200]);
  });

  it("takes a resample that cannot be fitted for the farthest", () => {
    let calls = 0;
    const fit: Family["fit"] = () => (calls++ === 0 ? [0, 1] : undefined);
    expect(chances(known([0.5], fit))).toEqual([1, 1]);
    expect(
      testFit(
        known([0.5], () => undefined),
        sorted,
        "test",
      ),
    ).toBeUndefined();
  });

  it("rounds resamples as the log does", () => {
    // Near as they are; to whole seconds 0, 0, 1, 1, of which D is 0.5, above the 0.75 − 0.4 of the values.
    expect(chances(known([0.125, 0.375, 0.625, 0.875]), 1)[1]).toBe(1);
    expect(chances(known([0.12, 0.38, 0.62, 0.88]), 0.01)[1]).toBe(1 / 200);
  });

  it("takes the fit for tests where a family has one, and the same resamples for the same seed", () => {
    const family = { ...known([0.125, 0.375, 0.625, 0.875], () => undefined), testFit: () => [0, 1] };
    expect(chances(family)).toEqual([1 / 200, 1 / 200]);
    const values = Float64Array.from({ length: 30 }, normal.sampler([10, 1], alea("resampled"))).toSorted();
    expect(testFit(normal, values, "one")).toEqual(testFit(normal, values, "one"));
    expect(testFit(normal, values, "other")).not.toEqual(testFit(normal, values, "one"));
  });
});

describe("an interval by resamples", () => {
  const linearly: Family = { ...normal, pivots: ([at = 0]) => [{ at, scale: 2, isLog: false }] };
  /** Refits whose pivots lie 2, 4, 6, … above that of the parameters, whose scale is 2: errors 1, 2, 3, …. */
  const rising = () => {
    let i = 0;
    return () => [100 + 2 * ++i];
  };

  it("leaves out the tenth of 399 errors from either side, in the scale of the sample", () => {
    // Its ends have the errors 390 and 10: 100 − 2 × 390 and 100 − 2 × 10.
    expect(pivotRanges(linearly, [100], rising())).toEqual([[-680, 80]]);
    expect(pivotRanges(linearly, [100], rising(), 0.5)).toEqual([[-290, 90]]);
  });

  it("goes without refits that fail", () => {
    // Every second of 399 fails: of 199 errors 1 to 199 those of 195 and 5 are ends.
    const next = rising();
    let i = 0;
    expect(pivotRanges(linearly, [100], () => (i++ % 2 === 0 ? undefined : next()))).toEqual([[-290, 90]]);
  });

  it("is that of the parameter where the pivot is its logarithm", () => {
    const logarithmic: Family = { ...normal, pivots: ([at = 0]) => [{ at, scale: 1, isLog: true }] };
    const [[low, high] = [0, 0]] = pivotRanges(logarithmic, [0], () => [0.5]);
    expect([low, high]).toEqual([expect.closeTo(Math.exp(-0.5), 12), expect.closeTo(Math.exp(-0.5), 12)]);
  });

  it("is narrower by the root of the values above 500, or by their number where errors fall so fast", () => {
    const sizes = new Set<number>();
    const of = (count: number, more: Partial<Family> = {}) => {
      const family: Family = { ...linearly, ...more, fit: (values) => (sizes.add(values.length), [102]) };
      return parameterRanges(family, [100], new Float64Array(count), "test")[0]?.[0];
    };
    // An error of 1 in a scale of 2; of 2,000 values 500 are a quarter.
    expect([of(2000), of(2000, { isFast: true }), of(500)]).toEqual([99, 99.5, 98]);
    expect([...sizes]).toEqual([500]);
    expect(of(100)).toBe(98);
    expect(parameterRanges({ ...linearly, ranges: () => [[1, 2]] }, [100], new Float64Array(9), "test")).toEqual([[1, 2]]); // prettier-ignore
  });

  it("of the ends of a uniform distribution lies outside the values", () => {
    const values = Float64Array.from({ length: 50 }, uniform.sampler([7, 8], alea("ends"))).toSorted();
    const [[, high] = [0, 0], [low] = [0, 0]] = parameterRanges(uniform, uniform.fit(values)!, values, "test");
    expect([high < values[0]!, low > values.at(-1)!]).toEqual([true, true]);
  });
});

describe("the search of a least value", () => {
  /** Points at which the cost is asked, in their order, and the best of them. */
  const walk = (cost: (x: number) => number, steps: number, start = 1) => {
    const asked: number[] = [];
    const [found] = simplexSearch(([x = 0]) => (asked.push(x), cost(x)), [start], 1, steps);
    return { asked, found };
  };

  it("reflects the worst point, and goes on that way where that is better than the best", () => {
    expect(walk((x) => x * x, 1)).toEqual({ asked: [1, 2, 0, -1], found: 0 });
    expect(walk((x) => (x + 5) * (x + 5), 1)).toEqual({ asked: [1, 2, 0, -1], found: -1 });
  });

  it("contracts to the better side where the reflected point is worse", () => {
    expect(walk((x) => (x - 1.4) * (x - 1.4), 1)).toEqual({ asked: [1, 2, 0, 0.5, 1.5], found: 1.5 });
    expect(walk((x) => (x - 0.6) * (x - 0.6), 1)).toMatchObject({ found: 0.5 });
  });

  it("shrinks to the best point where nothing is better than the worst", () => {
    const costs = new Map([[1, 0], [2, 1]]); // prettier-ignore
    const { asked, found } = walk((x) => costs.get(x) ?? 3, 1);
    expect([asked, found]).toEqual([[1, 2, 0, 0.5, 1.5, 1, 1.5], 1]);
  });

  it("ends where all corners cost the same", () => {
    expect(walk(() => 7, 200).asked).toEqual([1, 2]);
  });

  it("finds the minimum of Rosenbrock's valley at (1, 1)", () => {
    const valley = ([x = 0, y = 0]: readonly number[]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2;
    const [x, y] = simplexSearch(valley, [-1.2, 1], 1, 400);
    expect([x, y]).toEqual([expect.closeTo(1, 3), expect.closeTo(1, 3)]);
  });

  it("takes a reflected point between the best and the second worst as it is", () => {
    // Corners (0, 0), (1, 0), (0, 1) cost 0, 2, 5; the worst goes to (1, −1), which costs 1.
    const costs = new Map([["0,0", 0], ["1,0", 2], ["0,1", 5], ["1,-1", 1]]); // prettier-ignore
    const asked: string[] = [];
    const found = simplexSearch((point) => (asked.push(point.join()), costs.get(point.join()) ?? 9), [0, 0], 1, 1);
    expect([asked, found]).toEqual([
      ["0,0", "1,0", "0,1", "1,-1"],
      [0, 0],
    ]);
  });
});
