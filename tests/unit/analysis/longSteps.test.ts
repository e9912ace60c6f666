// The ideal cycle of a cell in which one step is far longer or shorter than all others.
import { expect, test } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { cellFlow } from "#cell/run/cellFlow.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import { firstCases } from "../../support/caseCount.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";

const cells: readonly (readonly [name: string, station: string])[] = [
  ["two-station", "stations.left"],
  ["bottle-continuous", "stations.left"],
  ["two-molds", "stations[0]"],
];
const times = ["1 ms", "5 min", "20 min", "600000 s"];

// A search that grows with the time of the step exceeds the test's limit of time or memory.
for (const [name, station] of firstCases(cells, 2)) {
  for (const step of firstCases(["cool", "open"], 1)) {
    test.for(times)(`${name}, ${step} of one station %s: the search for an order ends`, (time) => {
      const cycle = idealCycle(scenarioOf(shippedText(name), name, [`${station}.steps.${step}=${time}`]));
      expect(cycle.secondsPerShot).toBeGreaterThan(0);
      expect(cycle.secondsPerShot).toBeLessThan(60);
    });
  }
}

test("a flow holds the shots that were asked for, whatever a slow station takes for one", () => {
  const slow = scenarioOf(shippedText("two-station"), "two-station", ["stations.left.steps.cool=100 h"]);
  const nodes = cellFlow(planOf(slow), 300);
  expect(nodes.filter(({ role }) => role === "mold.drop")).toHaveLength(300);
  expect(nodes.length).toBeLessThan(300 * 20);
});

test("a step of years has a bound in place of an order, since no run comes to so many shots", () => {
  const slow = scenarioOf(shippedText("two-station"), "two-station", ["valve.shift=300000000 s"]);
  const { method, secondsPerShot } = idealCycle(slow);
  expect(method).toBe("bound");
  // By hand: two shifts of 3e8 s, a recharge of 3.58 s and a drop of 1.09 s.
  expect(secondsPerShot).toBeCloseTo(6e8 + 4.67, 0);
});
