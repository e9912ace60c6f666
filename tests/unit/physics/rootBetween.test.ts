// Holds the search for a root to roots that are known beforehand, and to few looks at the quantity.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { rootBetween } from "#physics/numeric/rootBetween.ts";

describe("the root between two ends", () => {
  test("is the one from which the quantity was made, whatever its shape", () => {
    // [C] each quantity is 0 at the root by its own making.
    const shapes: readonly ((x: number) => number)[] = [
      (x) => x,
      (x) => -x,
      (x) => x * x * x,
      (x) => Math.expm1(30 * x),
      (x) => (x > 0 ? 1 : -1e6),
      (x) => 1e-300 * x,
      (x) => 1e200 * x,
    ];
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), fc.constantFrom(...shapes), (root, shape) => {
        expect(Math.abs(rootBetween((x) => shape(x - root), 0, 1) - root)).toBeLessThanOrEqual(1e-15);
      }),
    );
  });

  test("takes fewer looks than halving would, and never many more", () => {
    const looksFor = (quantity: (x: number) => number): number => {
      let looks = 0;
      rootBetween((x) => (looks++, quantity(x)), 0, 2);
      return looks;
    };
    expect(looksFor((x) => x * x - 2)).toBeLessThan(25);
    expect(looksFor((x) => (x > 1 / 3 ? 1 : -1))).toBeLessThan(190);
  });

  test("is refused where the signs are alike", () => {
    expect(() => rootBetween((x) => x + 1, 0, 1)).toThrow("changes its sign");
  });
});
