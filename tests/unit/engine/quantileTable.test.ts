// Holds every node of the quantile tables to the exact quantile.
import gammaQuantile from "@stdlib/stats-base-dists-gamma-quantile";
import lognormalQuantile from "@stdlib/stats-base-dists-lognormal-quantile";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import triangularQuantile from "@stdlib/stats-base-dists-triangular-quantile";
import weibullQuantile from "@stdlib/stats-base-dists-weibull-quantile";
import weibullStdev from "@stdlib/stats-base-dists-weibull-stdev";
import { describe, expect, test } from "vitest";
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, UPPER_TAIL } from "#core/border/numbers.ts";
import { quantileTable } from "#engine/distributions/quantileTable.ts";

/** Every node that a draw may read, with its probability. */
function nodes(): readonly (readonly [node: number, p: number])[] {
  const body = Array.from({ length: CELLS - (2 * CELLS) / FINER + 1 }, (_, i) => CELLS / FINER + i);
  const tail = Array.from({ length: CELLS - EXACT_CELLS + 1 }, (_, i) => EXACT_CELLS + i);
  const finest = CELLS * FINER;
  return [
    ...body.map((index) => [BODY + index, index / CELLS] as const),
    ...tail.map((index) => [LOWER_TAIL + index, index / finest] as const),
    ...tail.map((index) => [UPPER_TAIL + CELLS - index, 1 - index / finest] as const),
  ];
}

function expectNodes(table: Float64Array, quantile: (p: number) => number, most: number): void {
  let farthest = 0;
  for (const [node, p] of nodes()) farthest = Math.max(farthest, Math.abs(table[node]! - quantile(p)));
  expect(farthest).toBeLessThan(most);
}

/** Tolerances in standard deviations, for coefficients of variation up to 1, up to 1.4, and above. */
const [near, fair, far] = [1e-8, 1e-7, 1e-4];
const each = (shapes: readonly number[], most: number): readonly (readonly [number, number])[] =>
  shapes.map((shape) => [shape, most]);

describe("every node agrees with @stdlib's quantile", () => {
  test.each([...each([0.05, 0.1, 0.2], far), ...each([0.5, 0.7], fair), ...each([1, 2, 5, 20, 64, 100, 400], near)])(
    "for gamma of shape %d within %d",
    (shape, most) => {
      const sd = 1 / Math.sqrt(shape);
      expectNodes(quantileTable({ kind: "gamma", shape }), (p) => gammaQuantile(p, shape, shape), most * sd);
    },
  );

  test.each([...each([0.01, 0.1, 0.5, 0.8], near), ...each([1], fair), ...each([1.5, 2, 3], far)])(
    "for lognormal with a logarithm of deviation %d within %d",
    (spread, most) => {
      // At mean 1 the sd is √(exp(spread²) − 1): Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions, vol. 1,
      // ch. 14 [M+C].
      const sd = Math.sqrt(Math.exp(spread * spread) - 1);
      const quantile = (p: number): number => lognormalQuantile(p, (-spread * spread) / 2, spread);
      expectNodes(quantileTable({ kind: "lognormal", shape: spread }), quantile, most * sd);
    },
  );

  test.each([...each([0.1, 0.2, 0.5], far), ...each([0.8], fair), ...each([1, 1.5, 3, 20], near)])(
    "for Weibull of shape %d within %d",
    (shape, most) => {
      const quantile = (p: number): number => weibullQuantile(p, shape, 1);
      expectNodes(quantileTable({ kind: "weibull", shape }), quantile, most * weibullStdev(shape, 1));
    },
  );

  test("for exponential", () => {
    expectNodes(quantileTable({ kind: "exponential", shape: 0 }), (p) => -Math.log1p(-p), near);
  });
});

test.each([0, 0.2, 0.5, 1])(
  "the table of a triangular distribution with mode %d equals @stdlib's quantile up to the last bit",
  (mode) => {
    expectNodes(
      quantileTable({ kind: "triangular", shape: mode }),
      (p) => triangularQuantile(p, 0, 1, mode),
      Number.EPSILON,
    );
  },
);

test("the table of a uniform distribution is u", () => {
  const table = quantileTable({ kind: "uniform", shape: 0 });
  for (const [node, p] of nodes()) expect(table[node]).toBe(p);
});

test("a table does not change when others are made after it", () => {
  const earlier = [0.2, 0.6].map((shape) => quantileTable({ kind: "triangular", shape }));
  const copies = earlier.map((table) => table.slice());
  for (const shape of [0.3, 3]) quantileTable({ kind: "gamma", shape });
  expect(earlier).toEqual(copies);
});

test("the normal table equals @stdlib's quantile bit for bit", () => {
  const table = quantileTable({ kind: "normal", shape: 0 });
  for (const [node, p] of nodes()) expect(table[node]).toBe(normalQuantile(p, 0, 1) + 0);
});
