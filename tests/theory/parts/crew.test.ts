// People on the cell's own table: one operator for too many molds against machine repair, ways and urgency by hand timelines.
// [M] from memory of the named source, [C] computed independently of this project.
import { describe, expect, it, test } from "vitest";
import { elasticityMethod } from "#analysis/bottleneck/elasticity.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { FixedStation } from "../../support/fixedCell.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { always, exponential, server, takeawayCell } from "../../support/takeawayCell.ts";

/** Molds that only cool, for which an instant screw is never short, and people who take the parts out. */
function minded(molds: number, operators: number, cool: Distribution, remove: Distribution, length: number): Scenario {
  const one: FixedStation = { recharge: 0, drop: 0, close: 0, cool: 0, remove: 0 };
  const station: Partial<StationSpec> = { cool, remove: { time: remove, by: "operator" } };
  const cell = takeawayCell({ stations: Array.from({ length: molds }, () => one), shift: 0, operators }, [], {
    station,
  });
  return { ...cell, run: { ...cell.run, length, warmup: length / 20, seed: "minded" } };
}

/** Mean number of stations in a state, over replications. */
function inState(
  scenario: Scenario,
  states: readonly string[],
  replications: number,
): { mean: number; halfWidth: number } {
  const plan = planCell(scenario);
  const means = Array.from({ length: replications }, (_, replication) => {
    const { stateTimes, fromTick, untilTick } = runCell(plan, { replication });
    const own = stateTimes.filter(({ resource, state }) => resource.startsWith("station") && states.includes(state));
    return own.reduce((sum, { ticks }) => sum + ticks, 0) / (untilTick - fromTick);
  });
  const { mean, halfWidth } = meanInterval(means, 0.99);
  return { mean, halfWidth: halfWidth! };
}

describe("operators who take the parts out, as a finite source", () => {
  // Ashcroft, J. R. Stat. Soc. B 12 (1950) 145: constant service, p = 0.10, one operator [M+C]: machines running.
  test.each([
    [2, 1.8102],
    [4, 3.5791],
    [8, 6.8532],
  ])("%i molds and one operator with a removal of fixed time: molds at work", (molds, theory) => {
    const { mean, halfWidth } = inState(minded(molds, 1, exponential(60), always(6), 60_000), ["cooling"], 20);
    expect(Math.abs(mean - theory), String(mean)).toBeLessThanOrEqual(halfWidth);
    expect(halfWidth).toBeLessThan(0.01 * theory);
  });

  // Winston, Operations Research: Applications and Algorithms: 5 machines, 2 repairmen, 1/30 and 1/3 [M+C]: L 0.465, W 3.08.
  test("five molds and two operators, exponential: molds that wait or are emptied, and for how long", () => {
    const scenario = minded(5, 2, exponential(30), exponential(3), 60_000);
    const broken = inState(scenario, ["awaiting removal", "removal"], 30);
    expect(Math.abs(broken.mean - 0.465), String(broken.mean)).toBeLessThanOrEqual(broken.halfWidth);
    expect(broken.halfWidth).toBeLessThan(0.02 * 0.465);
    const plan = planCell(scenario);
    const stays = Array.from({ length: 30 }, (_, replication) => {
      const { stateTimes, stations } = runCell(plan, { replication });
      const ticks = stateTimes
        .filter(({ state }) => state === "awaiting removal" || state === "removal")
        .reduce((sum, each) => sum + each.ticks, 0);
      return ticks / 1e6 / stations.reduce((sum, { parts }) => sum + parts, 0);
    });
    const { mean, halfWidth } = meanInterval(stays, 0.99);
    expect(Math.abs(mean - 3.08), String(mean)).toBeLessThanOrEqual(halfWidth! + 0.005);
  });

  // The cell's closed form: removal / min(O, M) beside screw and station.
  it("set the ideal cycle where they are too few", () => {
    const one: FixedStation = { recharge: 2, drop: 1, close: 0.5, cool: 6, remove: 4, by: "operator" };
    const cell = takeawayCell({ stations: [one, one, one, one], shift: 0.2, operators: 1 }, []);
    const { secondsPerShot, circuits } = idealCycle(cell);
    expect(secondsPerShot).toBeCloseTo(4, 9);
    expect(circuits[0]!.name).toBe("crew");
  });
});

const statesOf = (scenario: Scenario, resource: string): readonly string[] => {
  const rows = [...eventRecorder(scenario)(1)].filter((event) => event.resource === resource);
  const lasting = rows.filter((event, i) => rows[i + 1]?.seconds !== event.seconds);
  const changes = lasting.filter((event, i) => lasting[i - 1]?.state !== event.state);
  return changes.map(({ seconds, state }) => `${Number(seconds.toFixed(6))} ${state}`);
};

describe("ways", () => {
  const mold: FixedStation = { recharge: 0, drop: 0, close: 0, cool: 10, remove: 2, by: "operator" };
  const walked = (stations: readonly FixedStation[], length: number, more: Partial<Scenario> = {}): Scenario =>
    takeawayCell({ stations, shift: 0, operators: 1, length }, more.takeaway ?? [], {
      walk: always(1.5),
      cavities: 2,
      ...more,
    });

  it("are gone once to a mold that stays the only one", () => {
    // Cooling until 10, the first way 10-11.5, removal 11.5-13.5; cooling until 23.5, removal at once until 25.5.
    const one = walked([{ ...mold, name: "left" }], 25);
    expect(statesOf(one, "operator 1")).toEqual([
      "0 free",
      "10 walking",
      "11.5 removing",
      "13.5 free",
      "23.5 removing",
    ]);
    expect(statesOf(one, "left")).toEqual([
      "0 cooling",
      "10 awaiting removal",
      "11.5 removal",
      "13.5 cooling",
      "23.5 removal",
    ]);
  });

  it("are gone from mold to mold, and the mold waits the longer", () => {
    // Both are ready at 10: left 10-11.5 walk, 11.5-13.5 removal; right 13.5-15 walk, 15-17 removal; left is ready at 23.5.
    const two = walked(
      [
        { ...mold, name: "left" },
        { ...mold, name: "right" },
      ],
      26,
    );
    expect(statesOf(two, "operator 1")).toEqual([
      "0 free",
      "10 walking",
      "11.5 removing",
      "13.5 walking",
      "15 removing",
      "17 free",
      "23.5 walking",
      "25 removing",
    ]);
    expect(statesOf(two, "right")).toEqual(["0 cooling", "10 awaiting removal", "15 removal", "17 cooling"]);
  });

  it("are gone once to a packing table, where one then stays", () => {
    const stations = ["left", "right"].map((name): FixedStation => ({ ...mold, name, by: "machine" }));
    const packing = server("packing", always(1), { by: "operator", buffer: 40 });
    const cell = walked(stations, 4000, { takeaway: [packing], taskOrder: ["removal", "packing"] });
    // One walk to the table, where he then stays.
    const walks = [...eventRecorder(cell)(1)].filter(
      ({ resource, state }) => resource === "operator 1" && state === "walking",
    );
    expect(walks).toHaveLength(1);
  });
});

describe("urgency", () => {
  const mold: FixedStation = { name: "left", recharge: 0, drop: 0, close: 0, cool: 10, remove: 2, by: "operator" };
  const packs = (taskOrder: NonNullable<Scenario["taskOrder"]>): Scenario =>
    takeawayCell(
      { stations: [mold], shift: 0, operators: 1, length: 40 },
      [server("packing", always(3), { by: "operator", buffer: 20 })],
      { cavities: 4, taskOrder },
    );

  it("empties the mold first where removal is the more urgent", () => {
    // Removal 10-12, four parts to pack 12-24; the mold is ready at 22, in the fourth: it waits for the end of that one.
    const cell = packs(["removal", "clearing", "repair", "packing"]);
    expect(statesOf(cell, "left").slice(0, 6)).toEqual([
      "0 cooling",
      "10 removal",
      "12 cooling",
      "22 awaiting removal",
      "24 removal",
      "26 cooling",
    ]);
    expect(statesOf(cell, "packing")).toEqual([
      "0 starved",
      "12 working",
      "24 starved",
      "26 working",
      "38 starved",
      "40 working",
    ]);
  });

  it("packs first where packing is: the mold waits until the table is empty", () => {
    const urgent = takeawayCell(
      { stations: [{ ...mold, cool: 8 }], shift: 0, operators: 1, length: 40 },
      [server("packing", always(3), { by: "operator", buffer: 20 })],
      { cavities: 4, taskOrder: ["packing", "removal", "clearing", "repair"] },
    );
    // Removal 8-10, packing 10-22; ready at 18, but parts lie there: removal 22-24.
    expect(statesOf(urgent, "left").slice(3, 5)).toEqual(["18 awaiting removal", "22 removal"]);
    const humble = { ...urgent, taskOrder: ["removal", "packing", "clearing", "repair"] as const };
    expect(statesOf(humble, "left").slice(3, 5)).toEqual(["18 awaiting removal", "19 removal"]);
  });
});

describe("among calls of one task", () => {
  it("goes by their order, never by the place in the list of stations", () => {
    // Removal of left 1-5, of middle 5-9; left is ready again at 6, but right called at 2.
    const left: FixedStation = { name: "left", recharge: 0, drop: 0, close: 0, cool: 1, remove: 4, by: "operator" };
    const stations = [left, { ...left, name: "middle", cool: 1.5 }, { ...left, name: "right", cool: 2 }];
    const cell = takeawayCell({ stations, shift: 0, operators: 1, length: 400 }, [], {
      taskOrder: ["removal", "clearing", "repair", "packing"],
    });
    const [first, , last] = runCell(planCell(cell), { replication: 1 }).stations;
    expect(Math.abs(first!.parts - last!.parts)).toBeLessThanOrEqual(1);
    expect(last!.parts).toBeGreaterThan(30);
  });
});

describe("stops", () => {
  const text = (more: string): Scenario =>
    scenarioOf(
      cellText(2, `crew: { operators: 1, walk: 2 s }\n${more}`),
      "stations.steps.clear={ time: 20 s, by: operator }",
      "stations.steps.remove.by=operator",
      "run.length=20 h",
    );

  it("that come while the operator is on his way to the mold do not hold the hand that is to end them", () => {
    const scenario = text(
      "stops: [{ name: jam, resource: every station, clock: calendar, between: { exponential: 60 s }, repair: 5 s, by: operator }]",
    );
    const record = runCell(planCell(scenario), { replication: 1 });
    expect(record.standstill).toBeUndefined();
    expect(record.stops.length).toBeGreaterThan(1000);
    expect(record.stations[1]!.parts).toBeGreaterThan(1000);
  });

  it("of a server hold its part, and each of its places stops by luck of its own", () => {
    const scenario = text(`takeaway: { trimmer: { time: 2 s, places: 2, buffer: 6 } }
stops: [{ name: knife, resource: trimmer, between: { exponential: 120 s }, repair: 60 s }]`);
    const record = runCell(planCell(scenario), { replication: 1 });
    const of = (resource: string, state: string): number =>
      record.stateTimes.find((each) => each.resource === resource && each.state === state)!.ticks;
    for (const place of ["trimmer 1", "trimmer 2"]) {
      // Availability by working time: stopped / working = 60 / 120 [C].
      expect(of(place, "stopped") / of(place, "working")).toBeGreaterThan(0.4);
      expect(of(place, "stopped") / of(place, "working")).toBeLessThan(0.6);
    }
    expect(of("trimmer 1", "stopped")).not.toBe(of("trimmer 2", "stopped"));
    const parts = record.stations.reduce((sum, station) => sum + station.parts, 0);
    expect(parts - record.takeaway!.good).toBeLessThanOrEqual(20);
  });
});

describe("elasticity", () => {
  const mold: FixedStation = { recharge: 2, drop: 1, close: 0.5, cool: 6, remove: 1 };
  const method = (cell: Scenario): string => elasticityMethod(cell);
  const steady = [server("trimmer", exponential(1), { buffer: 4 })];

  it("is the critical path's only where nothing changes who or what comes next", () => {
    const one = takeawayCell({ stations: [mold], shift: 0.2 }, steady);
    expect(method(one)).toContain("exact");
    expect(method({ ...one, takeaway: [{ ...steady[0]!, rejects: 0.01 }] })).toContain("difference");
    expect(method({ ...one, takeaway: [{ ...steady[0]!, places: 2 }] })).toContain("difference");
    expect(method({ ...one, takeaway: [{ ...steady[0]!, by: "operator" }] })).toContain("difference");
    expect(method({ ...one, takeaway: [{ ...steady[0]!, by: "operator" }], operators: 1 })).toContain("exact");
    expect(method({ ...one, walk: always(1) })).toContain("difference");
  });
});
