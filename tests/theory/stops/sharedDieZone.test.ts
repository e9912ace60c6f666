// Holds a stopped mold in a shared die zone to timelines calculated by hand, and to a cell that goes on.
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { scenarioOf } from "../../support/cellScenario.ts";

const rules = ["finish", "hold", "scrap"] as const;
type Rule = (typeof rules)[number];

/** Without a stop station 1 travels in 0-1, closes 1-2, cuts 2-3, trims 3-4 and travels out 4-6. */
function stoppedCell(between: string, step: Rule, length: string): string {
  return `format: 1
product: { partMass: 42 g, flash: 30 % of part }
delivery: { kind: continuous, rate: fixed, recharge: 1 s, dieZone: shared }
stations:
  count: 2
  cavities: 2
  steps: { travelIn: 1 s, close: 1 s, cut: 1 s, travelOut: 2 s, blow: 0.5 s, cool: 8 s, vent: 0.5 s, open: 0.5 s, remove: { time: 0.5 s }, clear: { time: 20 s } }
  extra: [{ after: cut, name: trim, time: 1 s }]
stops: [{ name: jam, resource: station 1, clock: calendar, start: fresh, between: ${between}, repair: 10 s, step: ${step} }]
run: { length: ${length}, replications: 1, seed: test, warmup: 0 s }
`;
}

/** Start of the first such step. */
function firstStart(scenario: Scenario, resource: string, step: string): number | undefined {
  const events = [...eventRecorder(scenario)(1)];
  return events.find((event) => event.resource === resource && event.step === step && event.state !== "stopped")
    ?.seconds;
}

// From the rule of a shared die zone and the matrix of stops [C]. A jam takes 10 s from its beginning.
describe("a mold that stops in a shared die zone", () => {
  it.each([
    // The cut and the trim are finished under the die; the travel out begins after the stop, and the next travel in with it.
    ["2.5 s", "finish", 12.5 + 1, 12.5 + 1 + 2],
    ["3.5 s", "finish", 13.5, 15.5],
    // A lost shot leaves the die zone at once, before the cut, after it and on the way out.
    ["2.5 s", "hold", 2.5, 3.5],
    ["2.5 s", "scrap", 2.5, 3.5],
    ["3.5 s", "scrap", 3.5, 4.5],
    ["5.5 s", "scrap", 4, 5.5],
    // A mold that stops on its way out keeps the next one from its parison, not from its travel in.
    ["5.5 s", "hold", 4, 16],
    ["5.5 s", "finish", 4, 6],
  ] as const)(
    "after %s with `%s` lets the next one travel in at %f s and close at %f s",
    (at, rule, travelIn, close) => {
      const scenario = scenarioOf(stoppedCell(at, rule, "17 s"));
      expect(firstStart(scenario, "station 2", "travel in")).toBeCloseTo(travelIn, 9);
      expect(firstStart(scenario, "station 2", "close")).toBeCloseTo(close, 9);
    },
  );

  it.each(["2.5 s", "3.5 s", "5.5 s"])("after %s is cleared when its stop ends", (at) => {
    const begins = parseFloat(at) + 10;
    expect(firstStart(scenarioOf(stoppedCell(at, "scrap", "17 s")), "station 1", "clear")).toBeCloseTo(begins, 9);
  });
});

test("no stop at any instant keeps the die zone for ever", () => {
  fc.assert(
    fc.property(fc.nat(), fc.constantFrom(...rules), (seed, rule) => {
      const text = stoppedCell("{ exponential: 60 s }", rule, "20 min");
      const { standstill, stations } = runCell(planCell(scenarioOf(text, `run.seed=${seed}`)), { replication: 1 });
      expect(standstill).toBeUndefined();
      // A turn takes 16 s. A stop and its clearing take 30 s, a stop comes after some 60 s.
      for (const { shots } of stations) expect(shots).toBeGreaterThan(1200 / 16 / 4);
    }),
    { seed: 20261209 },
  );
});

describe("the key `dieZone`", () => {
  const assumed = (change: (text: string) => string) => {
    const text = change(stoppedCell("60 s", "hold", "1 h"));
    return readScenario(text, { name: "test", file: "test.yaml" }).assumed.find(
      ({ path }) => path === "delivery.dieZone",
    );
  };
  const without = (text: string): string => text.replace(", dieZone: shared", "");

  it("is listed as assumed with its reason where several molds share a die", () => {
    expect(assumed(without)?.value).toBe("shared");
    expect(assumed(without)?.reason).toContain("common practice, no published source");
    expect(assumed((text) => text)).toBeUndefined();
    expect(assumed((text) => without(text).replace("count: 2", "count: 1"))).toBeUndefined();
  });
});
