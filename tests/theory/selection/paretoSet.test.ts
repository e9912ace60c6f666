// Holds the Pareto set to a drawing by hand and to its definition.
import * as fc from "fast-check";
import { expect, it } from "vitest";
import { paretoSet } from "#analysis/selection/paretoSet.ts";

it("has the layouts on the edge, cheapest first, with both of two equal ones", () => {
  const layouts = [
    { output: 900, cost: 12 },
    { output: 700, cost: 8 },
    // As much as the first for more.
    { output: 900, cost: 13 },
    // Less than the first for as much.
    { output: 850, cost: 12 },
    { output: 500, cost: 5 },
    { output: 700, cost: 8 },
  ];
  expect(paretoSet(layouts)).toEqual([4, 1, 5, 0]);
  expect(paretoSet([])).toEqual([]);
});

it("leaves out a layout exactly where another one is as good in both and better in one", () => {
  const layout = fc.record({ output: fc.integer({ min: 0, max: 6 }), cost: fc.integer({ min: 0, max: 6 }) });
  fc.assert(
    fc.property(fc.array(layout, { maxLength: 12 }), (layouts) => {
      const found = new Set(paretoSet(layouts));
      for (const [place, { output, cost }] of layouts.entries()) {
        const isDominated = layouts.some(
          (other) => (other.output > output && other.cost <= cost) || (other.output >= output && other.cost < cost),
        );
        expect(found.has(place)).toBe(!isDominated);
      }
    }),
  );
});
