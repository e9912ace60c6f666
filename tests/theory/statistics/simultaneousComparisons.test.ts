// Holds simultaneous intervals, by macro-replications, to the confidence that they claim.
import { describe, expect, it } from "vitest";
import { amongBest } from "#analysis/statistics/amongBest.ts";
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";
import { normalFrom } from "../../support/draws/normalFrom.ts";

const layouts = [50, 50, 50.4, 50.8, 52];
const spreads = [0.4, 0.8, 0.6, 1, 0.5];
const replications = 8;
const macroReplications = 1500;

/** Normal values with a common part, as common random numbers give them, and unequal spreads of their own. */
function macroReplication(normal: () => number): readonly (readonly number[])[] {
  const common = Array.from({ length: replications }, () => 1.5 * normal());
  return layouts.map((mean, i) => common.map((part) => mean + part + spreads[i]! * normal()));
}

const pairs = layouts.flatMap((_, i) => layouts.slice(0, i).map((_base, j) => [j, i] as const));

/** How often all intervals of these pairs hold their true differences: simultaneous ones and individual ones. */
function coverage(chosen: readonly (readonly [base: number, other: number])[], seed: string) {
  const normal = normalFrom(seed);
  const held = { simultaneous: 0, individual: 0 };
  for (let macro = 0; macro < macroReplications; macro += 1) {
    const values = macroReplication(normal);
    const found = chosen.map(([base, other]) => {
      const difference = pairedDifference(values[other]!, values[base]!, { comparisons: chosen.length });
      const error = Math.abs(difference.mean - (layouts[other]! - layouts[base]!));
      return [error <= difference.simultaneousHalfWidth!, error <= difference.halfWidth!] as const;
    });
    held.simultaneous += found.every(([simultaneous]) => simultaneous) ? 1 : 0;
    held.individual += found.every(([, individual]) => individual) ? 1 : 0;
  }
  return { simultaneous: held.simultaneous / macroReplications, individual: held.individual / macroReplications };
}

// Three standard errors of a share of 0.95 in 1,500 macro-replications.
const noise = 3 * Math.sqrt((0.95 * 0.05) / macroReplications);

describe("simultaneous intervals under common random numbers", () => {
  it.each([
    ["against the first", pairs.filter(([base]) => base === 0)],
    ["of all pairs", pairs],
  ])("%s hold together in 95 % of the studies; individual ones do not", (name, chosen) => {
    const found = coverage(chosen, name);
    expect(found.simultaneous).toBeGreaterThan(0.95 - noise);
    expect(found.individual).toBeLessThan(0.95 - noise);
  });
});

describe("the best layouts", () => {
  it("contain the true best in 95 % of the studies, also where two are equally good", () => {
    const normal = normalFrom("best");
    let lost = 0;
    let named = 0;
    for (let macro = 0; macro < macroReplications; macro += 1) {
      const values = macroReplication(normal);
      lost += amongBest(values).includes(layouts.length - 1) ? 0 : 1;
      // The smallest is best: the first two are equally good.
      const least = amongBest(values.map((each) => each.map((value) => -value)));
      named += [0, 1].every((layout) => least.includes(layout)) ? 1 : 0;
    }
    expect(lost / macroReplications).toBeLessThan(0.05 + noise);
    expect(named / macroReplications).toBeGreaterThan(0.95 - noise);
  });

  it("are one where one is clearly best, and all where nothing differs", () => {
    const values = [1, 2, 3].map((mean) => [0, 0.1, 0.2, 0.1].map((part) => mean + part));
    expect(amongBest(values)).toEqual([2]);
    expect(amongBest([values[0]!, values[0]!])).toEqual([0, 1]);
    expect(amongBest([[1], [2], [2]])).toEqual([1, 2]);
  });
});
