// Holds one step of the sequential selection to published constants, a worked example and the procedure computed another way.
import * as fc from "fast-check";
import { sampleVariance } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { fixedSizeReplications } from "#analysis/selection/fixedSizeReplications.ts";
import { kimNelson, type Selection, type SelectionGoal } from "#analysis/selection/kimNelson.ts";
import { selectionConstants } from "#analysis/selection/selectionConstants.ts";
import { normalFrom } from "../../support/draws/normalFrom.ts";

type Values = readonly (readonly number[])[];

const goal: SelectionGoal = {
  better: "more",
  worthwhile: 1,
  confidence: 0.95,
  firstReplications: 10,
  mostReplications: 400,
};

describe("the constants of the selection", () => {
  // Kim and Nelson, Handbooks in Operations Research 13 (2006), chapter 17: 0.635 and 11.429 for k = 5 [M]; five digits [C].
  it.each([
    [5, 0.63497, 11.4294],
    [2, 0.33405, 6.0129],
  ])("of %i layouts with 95 % and 10 first replications", (layouts, eta, h2) => {
    const found = selectionConstants(layouts, 0.95, 10);
    expect(found.eta).toBeCloseTo(eta, 5);
    expect(found.h2).toBeCloseTo(h2, 4);
  });

  it("solve the equation of the paper: ½ (1 + 2η)^(−(n0 − 1)/2) = α / (k − 1)", () => {
    for (const [layouts, confidence, first] of [
      [3, 0.9, 5],
      [40, 0.975, 20],
    ] as const) {
      const { eta } = selectionConstants(layouts, confidence, first);
      expect(0.5 * (1 + 2 * eta) ** (-(first - 1) / 2)).toBeCloseTo((1 - confidence) / (layouts - 1), 12);
    }
  });
});

/**
 * Response times of four designs of an inspection station with common random numbers, 10 replications. Data and result: Rossetti,
 * open textbook on simulation, section "Multiple comparison with the best" [R]; from Banks, Carson, Nelson and Nicol, Discrete-Event
 * System Simulation, chapter 12 [M]. Two minutes do not matter; less is better.
 */
const inspection: Values = [
  [63.72, 32.24, 40.28, 36.94, 36.29, 56.94, 34.1, 63.36, 49.29, 87.2],
  [63.06, 31.78, 40.32, 37.71, 36.79, 57.93, 33.39, 62.92, 47.67, 80.79],
  [57.74, 29.65, 36.52, 35.71, 33.81, 51.54, 31.39, 57.24, 42.63, 67.27],
  [62.63, 31.56, 39.87, 37.35, 36.65, 57.15, 33.3, 62.21, 47.46, 79.6],
];
const inspectionGoal: SelectionGoal = { ...goal, better: "less", worthwhile: 2 };

describe("four designs of an inspection station", () => {
  it("need 45 replications each with a fixed size, as published", () => {
    expect(fixedSizeReplications(inspection, inspectionGoal)).toBe(45);
  });

  it("are decided by the first 10: the third is selected, which has the least published mean", () => {
    // h² = 10.164 for k = 4. Variances of the differences [R]: 28.498 (1, 3), 11.858 (2, 3), 9.850 (3, 4), 5.490 (1, 4), 4.498 (1, 2).
    // W(10) = h² S² / 4 − 10: 62.4, 20.1, 15.0, 3.9, 1.4. Leads: 56.9, 48.9, 44.3, 12.6, 8.0. So 3 drops 2 and 4, and 4 drops 1 [C].
    expect(kimNelson(inspection, inspectionGoal)).toEqual({
      kind: "selected",
      layout: 2,
      tied: [],
      replications: 10,
      dropped: [
        { layout: 0, replication: 10, by: 3 },
        { layout: 1, replication: 10, by: 2 },
        { layout: 3, replication: 10, by: 2 },
      ],
    });
  });

  it("go on where only the first and the third are compared", () => {
    // h² = 6.0129 for k = 2: W(10) = 6.0129 × 28.498 / 4 − 10 = 32.8 is below the lead of 56.9; with D = 1 it is 80.7 [C].
    const two = [inspection[0]!, inspection[2]!];
    expect(kimNelson(two, inspectionGoal).kind).toBe("selected");
    // The lead of 5.686 a replication meets W(r) = (171.36 − r)/2 at r = 85.68 / 6.186 = 13.85 [C].
    const found = kimNelson(two, { ...inspectionGoal, worthwhile: 1 });
    expect(found).toMatchObject({ kind: "running", survivors: [0, 1], more: 4, replications: 10 });
  });
});

describe("a selection", () => {
  const flat = (mean: number): number[] => Array.from({ length: 10 }, () => mean);

  it("needs the first stage of all", () => {
    expect(kimNelson([[1], [1, 2]], goal)).toMatchObject({ kind: "running", more: 9, survivors: [0, 1] });
    expect(kimNelson([[], []], goal)).toMatchObject({ kind: "running", more: 10 });
  });

  it("keeps equal layouts, names the first and the others as tied", () => {
    const waves = (shift: number): number[] => Array.from({ length: 10 }, (_, i) => shift + (i % 3));
    expect(kimNelson([flat(1), flat(1)], goal)).toMatchObject({ kind: "selected", layout: 0, tied: [1], dropped: [] });
    expect(kimNelson([waves(0), waves(1), waves(1)], goal)).toMatchObject({
      layout: 1,
      tied: [2],
      dropped: [{ layout: 0, replication: 10 }],
    });
    // 0.1 + 0.2 and 0.3 are one number with two roundings.
    expect(kimNelson([flat(0.3), flat(0.1 + 0.2)], goal)).toMatchObject({ layout: 0, tied: [1] });
  });

  it("selects the better of two without spread, however small the difference", () => {
    expect(kimNelson([flat(1), flat(1.01)], goal)).toMatchObject({ kind: "selected", layout: 1, tied: [] });
    expect(kimNelson([flat(1), flat(1.01)], { ...goal, better: "less" })).toMatchObject({ layout: 0 });
  });

  it("ends undecided at the cap, with all that are left", () => {
    const wild = (sign: number): number[] => Array.from({ length: 12 }, (_, i) => sign * (i % 2 === 0 ? 50 : -50));
    const capped = { ...goal, mostReplications: 12 };
    expect(kimNelson([wild(1), wild(-1)], capped)).toEqual({
      kind: "undecided",
      survivors: [0, 1],
      dropped: [],
      replications: 12,
    });
  });

  it("does not select barred layouts, but counts them among the comparisons", () => {
    const three = [flat(5), ...inspection.slice(1, 3).map((values) => values.map((value) => -value))];
    const among = kimNelson(three, { ...goal, worthwhile: 0.5 }, [0]);
    expect(among).toEqual(kimNelson([three[1]!, three[1]!, three[2]!], { ...goal, worthwhile: 0.5 }, [0]));
    expect(among.kind === "running" ? among.survivors : among.kind).toEqual([1, 2]);
    // 11.858 × h²(3) 8.1 against 11.858 × h²(2) 6.0: more comparisons take longer.
    const alone = kimNelson(three.slice(1), { ...goal, worthwhile: 0.5 });
    expect(among.kind === "running" && among.more).toBeGreaterThan(alone.kind === "running" ? alone.more : 0);
    expect(kimNelson([flat(1), flat(2)], goal, [1])).toMatchObject({ kind: "selected", layout: 0, replications: 10 });
  });
});

/** The steps as in the paper, on sums of each layout: Kim and Nelson 2001, c = 1 [M], by other code [C]. */
function byThePaper(values: Values, { confidence, worthwhile: D, firstReplications: n0 }: SelectionGoal) {
  const eta = 0.5 * (((2 * (1 - confidence)) / (values.length - 1)) ** (-2 / (n0 - 1)) - 1);
  const variance = (i: number, l: number) =>
    sampleVariance(values[i]!.slice(0, n0).map((value, j) => value - values[l]![j]!));
  const limit = (i: number, l: number) => (2 * eta * (n0 - 1) * variance(i, l)) / D ** 2;
  const sum = (i: number, r: number) => values[i]!.slice(0, r).reduce((total, value) => total + value, 0);
  let left = values.map((_, i) => i);
  for (let r = n0; ; r++) {
    const before = left;
    left = before.filter((i) =>
      before.every((l) => l === i || sum(i, r) >= sum(l, r) - Math.max(0, (D / 2) * (limit(i, l) - r))),
    );
    if (left.length === 1) return { layout: left[0]!, replications: r };
  }
}

/** Asks for as many replications as the step wants, and never shows more. */
function stepByStep(values: Values, wanted: SelectionGoal): Selection {
  let made = 0;
  for (;;) {
    const found = kimNelson(
      values.map((each) => each.slice(0, made)),
      wanted,
    );
    if (found.kind !== "running") return found;
    expect(found.more).toBeGreaterThan(0);
    made += found.more;
  }
}

describe("the steps of the selection", () => {
  const length = 3000;
  it("lead to the result of the paper, in calls of any size", () => {
    const study = fc.record({
      seed: fc.string(),
      layouts: fc.integer({ min: 2, max: 6 }),
      first: fc.integer({ min: 3, max: 15 }),
      spread: fc.double({ min: 0.2, max: 2, noNaN: true }),
    });
    fc.assert(
      fc.property(study, ({ seed, layouts, first, spread }) => {
        const normal = normalFrom(seed);
        const common = Array.from({ length }, normal);
        const values = Array.from({ length: layouts }, (_, i) => common.map((z) => i / 3 + z + spread * normal()));
        const wanted = { ...goal, confidence: 0.8, firstReplications: first, mostReplications: length };
        const found = stepByStep(values, wanted);
        expect(found).toEqual(kimNelson(values, wanted));
        expect(found).toMatchObject({ kind: "selected", ...byThePaper(values, wanted) });
        const negated = values.map((each) => each.map((value) => -value));
        expect(kimNelson(negated, { ...wanted, better: "less" })).toEqual(found);
      }),
      { numRuns: 60 },
    );
  });
});
