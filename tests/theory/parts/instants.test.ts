// Holds the order of what happens at one instant to recursions that are written from the table of instants [C].
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import type { CrewTask, Scenario } from "#scenario/scenario.ts";
import { caseCount } from "../../support/caseCount.ts";
import { scenarioOf } from "../../support/cellScenario.ts";
import { clearingRecursion, type Interval, type StationRun } from "../../support/recursions/clearingRecursion.ts";
import { packingRecursion, type PackingCell, type PackingRun } from "../../support/recursions/packingRecursion.ts";
import { always, server, takeawayCell } from "../../support/takeawayCell.ts";

const length = 300;
const orders: Readonly<Record<PackingCell["first"], readonly CrewTask[]>> = {
  packing: ["packing", "removal", "clearing", "repair"],
  removal: ["removal", "clearing", "repair", "packing"],
};

function scenarioOfPacking({ molds, cavities, operators, packers, buffer, pack, first }: PackingCell): Scenario {
  const stations = molds.map(({ cool, remove }, k) => ({
    name: `mold ${k}`,
    recharge: 0,
    drop: 0,
    close: 0,
    cool,
    remove,
    by: "operator" as const,
  }));
  const packing = server("packing", always(pack), { by: "operator", places: packers, buffer });
  return takeawayCell({ stations, shift: 0, operators, length }, [packing], { cavities, taskOrder: orders[first] });
}

function simulated(cell: PackingCell): PackingRun {
  const events = [...eventRecorder(scenarioOfPacking(cell))(1)];
  const starts = (name: string, step: string, shown: string): readonly number[] =>
    events
      .filter((event) => event.resource.startsWith(name) && event.step === step && event.state === shown)
      .map((event) => event.seconds);
  return {
    removals: cell.molds.map((_, k) => starts(`mold ${k}`, "remove", "removal")),
    packings: starts("packing", "packing", "working"),
  };
}

// Whole seconds from a small range, so that many things happen at one instant.
const seconds = fc.integer({ min: 1, max: 6 });
const packingCells: fc.Arbitrary<PackingCell> = fc.record({
  molds: fc.array(fc.record({ cool: seconds, remove: seconds }), { minLength: 1, maxLength: 3 }),
  cavities: fc.integer({ min: 1, max: 3 }),
  operators: fc.integer({ min: 1, max: 2 }),
  packers: fc.integer({ min: 1, max: 2 }),
  buffer: fc.integer({ min: 0, max: 4 }),
  pack: seconds,
  first: fc.constantFrom("packing" as const, "removal" as const),
});

describe("operators who remove and pack", () => {
  test("begin every task at the second of the recursion", () => {
    fc.assert(
      fc.property(packingCells, (cell) => {
        const recursed = packingRecursion(cell, length);
        expect(simulated(cell)).toEqual(recursed);
        expect(recursed.packings.length).toBeGreaterThan(10);
      }),
      { seed: 20261210 },
    );
  });

  // Calculated by hand: both molds are ready at 4. The operator removes the part of mold 0 from 4 to 6. At 6 that part has room, and
  // packing is more urgent than the removal that waits since 4: packing 6-9, removal of mold 1 from 9.
  it("pack a part that gets room at the instant at which they are free, before a less urgent removal that has waited", () => {
    const mold = { cool: 4, remove: 2 };
    const cell = { molds: [mold, mold], cavities: 1, operators: 1, packers: 1, buffer: 0, pack: 3 } as const;
    expect(simulated({ ...cell, first: "packing" }).removals.map(([first]) => first)).toEqual([4, 9]);
    expect(simulated({ ...cell, first: "removal" }).removals.map(([first]) => first)).toEqual([4, 6]);
  });
});

const stopRules = ["finish", "hold", "scrap"] as const;
const stationTimes = fc.record({
  drop: seconds,
  close: seconds,
  blow: seconds,
  cool: seconds,
  vent: seconds,
  open: seconds,
  remove: seconds,
  "shift to port": seconds,
  clear: seconds,
});
type StationTimes = typeof stationTimes extends fc.Arbitrary<infer Times> ? Times : never;

/** The recharge is so short that the shot is always full when the station is ready. */
function stoppedCell(times: StationTimes, rule: (typeof stopRules)[number], between: number, repair: number): Scenario {
  const { drop, close, blow, cool, vent, open, remove, clear, "shift to port": shift } = times;
  return scenarioOf(`format: 1
product: { partMass: 42 g }
delivery: { kind: reciprocating-screw, recharge: 1 ms, drop: ${drop} s }
valve: { shift: ${shift} s }
stations:
  - name: left
    cavities: 1
    steps: { close: ${close} s, blow: ${blow} s, cool: ${shift + cool} s, vent: ${vent} s, open: ${open} s, remove: { time: ${remove} s }, clear: { time: ${clear + shift} s } }
stops: [{ name: jam, resource: left, clock: calendar, start: fresh, between: ${between} s, repair: ${repair} s, step: ${rule} }]
run: { length: ${length} s, replications: 1, seed: test, warmup: 0 s }
`);
}

function startsOf(scenario: Scenario): StationRun {
  const own = [...eventRecorder(scenario)(1)].filter(({ resource }) => resource === "left");
  const events = own.filter(({ state }) => state !== "stopped");
  // A stop that begins or ends during a blow shows it once more.
  const starts = (shown: string): readonly number[] =>
    events.filter(({ state }, i) => state === shown && events[i - 1]?.state !== shown).map((event) => event.seconds);
  return { blown: starts("blowing"), cleared: starts("being cleared") };
}

test("a station begins every blow and every clearing at the second of the recursion, whenever it stops", () => {
  let clearings = 0;
  fc.assert(
    fc.property(
      stationTimes,
      fc.constantFrom(...stopRules),
      fc.integer({ min: 13, max: 60 }),
      seconds,
      (times, rule, between, repair) => {
        // The time to the next stop begins when a stop ends. It is longer than any clearing.
        const stops = Array.from({ length: 30 }, (_, n): Interval => {
          const from = between + n * (between + repair);
          return { from, to: from + repair };
        });
        const shift = times["shift to port"];
        const ticks = { ...times, cool: times.cool + shift, clear: times.clear + shift };
        const recursed = clearingRecursion(ticks, rule, stops, length);
        expect(startsOf(stoppedCell(times, rule, between, repair))).toEqual(recursed);
        clearings += recursed.cleared.length;
      },
    ),
    { seed: 20261211 },
  );
  expect(clearings).toBeGreaterThan(caseCount);
});
