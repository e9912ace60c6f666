// Holds the search for a root to known roots and to a limited number of evaluations.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { rootBetween } from "#physics/numeric/rootBetween.ts";

describe("the root between two ends", () => {
  test("is the known root, for functions of any shape", () => {
    // Each function is 0 at the drawn root by construction [C].
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

  test("takes fewer evaluations than bisection for smooth functions, and a limited number for steps", () => {
    const evaluationsFor = (quantity: (x: number) => number): number => {
      let evaluations = 0;
      rootBetween((x) => (evaluations++, quantity(x)), 0, 2);
      return evaluations;
    };
    expect(evaluationsFor((x) => x * x - 2)).toBeLessThan(25);
    expect(evaluationsFor((x) => (x > 1 / 3 ? 1 : -1))).toBeLessThan(190);
  });

  test("throws when both ends have the same sign", () => {
    expect(() => rootBetween((x) => x + 1, 0, 1)).toThrow("changes its sign");
  });
});
