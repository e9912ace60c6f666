// Adds what disturbs a cell to random scenarios: stops with clearing, walks, packing by operators, other kinds of melt delivery.
import * as fc from "fast-check";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { massMilligrams } from "./recursions/recursionComparison.ts";
import { server } from "./takeawayCell.ts";

const seconds = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => ({ kind: "fixed", value }) as const);
const maker = fc.constantFrom("machine" as const, "operator" as const);

/** One stop of each resource that is drawn. */
function stopsOf({ stations }: Scenario): fc.Arbitrary<readonly StopSpec[]> {
  const resources = ["plasticator", "valve", ...stations.map(({ name }) => name)];
  const stop = fc.record({
    comes: fc.record({ by: fc.constantFrom("calendar" as const, "working" as const), between: seconds(20, 200) }),
    repair: seconds(1, 60),
    by: fc.constantFrom("itself" as const, "operator" as const),
    step: fc.constantFrom("finish" as const, "hold" as const, "scrap" as const),
    start: fc.constantFrom("fresh" as const, "running" as const),
  });
  return fc
    .array(fc.option(stop), { minLength: resources.length, maxLength: resources.length })
    .map((drawn) =>
      drawn.flatMap((each, i) =>
        each === null ? [] : [{ ...each, name: "fault", resource: resources[i]!, shift: "any" as const }],
      ),
    );
}

function deliveryOf(scenario: Scenario): fc.Arbitrary<Scenario["delivery"]> {
  const capacity = (1.5 * Math.max(...scenario.stations.map(massMilligrams))) / 1e6;
  const head = { kind: "accumulator-head" } as const;
  return fc.constantFrom<Scenario["delivery"]>(
    scenario.delivery,
    { ...head, accumulator: "per-station" },
    { ...head, accumulator: "common", shotCapacity: capacity },
  );
}

export function disturbed(scenarios: fc.Arbitrary<Scenario>): fc.Arbitrary<Scenario> {
  return scenarios.chain((scenario) =>
    fc
      .record({
        delivery: deliveryOf(scenario),
        stops: stopsOf(scenario),
        clear: fc.option(fc.record({ time: seconds(1, 20), by: maker })),
        walk: fc.option(seconds(0.1, 3)),
        packing: fc.option(seconds(0.1, 2)),
      })
      .map(({ delivery, stops, clear, walk, packing }): Scenario => ({
        ...scenario,
        delivery,
        stations: scenario.stations.map((station) => (clear ? { ...station, clear } : station)),
        ...(stops.length > 0 ? { stops } : {}),
        ...(walk ? { walk } : {}),
        ...(packing ? { takeaway: [server("packing", packing, { by: "operator", places: 2, buffer: 30 })] } : {}),
      })),
  );
}
