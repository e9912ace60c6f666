// Holds the operators of a cell to machine repair models, and walks and priorities to timelines calculated by hand.
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

/** Molds that only cool and never wait for melt, and operators who remove the parts. */
function attendedCell(
  molds: number,
  operators: number,
  cool: Distribution,
  remove: Distribution,
  length: number,
): Scenario {
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

describe("removal by operators as machine repair", () => {
  // Machines running: Ashcroft, The productivity of several machines under the care of one operator, J. R. Stat. Soc. B 12
  // (1950) 145: constant service, p = 0.10 [M+C].
  test.each([
    [2, 1.8102],
    [4, 3.5791],
    [8, 6.8532],
  ])("%i molds and one operator with fixed removal time have Ashcroft's number of cooling molds", (molds, theory) => {
    const { mean, halfWidth } = inState(attendedCell(molds, 1, exponential(60), always(6), 60_000), ["cooling"], 20);
    expect(Math.abs(mean - theory), String(mean)).toBeLessThanOrEqual(halfWidth);
    expect(halfWidth).toBeLessThan(0.01 * theory);
  });

  // Winston, Operations Research: Applications and Algorithms, machine repair model: 5 machines, 2 repairers, rates 1/30 and 1/3:
  // L 0.465, W 3.08 [M+C].
  test("five molds and two operators with exponential times have Winston's L and W of molds in removal", () => {
    const scenario = attendedCell(5, 2, exponential(30), exponential(3), 60_000);
    const inRemoval = inState(scenario, ["no operator free", "removal"], 30);
    expect(Math.abs(inRemoval.mean - 0.465), String(inRemoval.mean)).toBeLessThanOrEqual(inRemoval.halfWidth);
    expect(inRemoval.halfWidth).toBeLessThan(0.02 * 0.465);
    const plan = planCell(scenario);
    const stays = Array.from({ length: 30 }, (_, replication) => {
      const { stateTimes, stations } = runCell(plan, { replication });
      const ticks = stateTimes
        .filter(({ state }) => state === "no operator free" || state === "removal")
        .reduce((sum, each) => sum + each.ticks, 0);
      return ticks / 1e6 / stations.reduce((sum, { parts }) => sum + parts, 0);
    });
    const { mean, halfWidth } = meanInterval(stays, 0.99);
    expect(Math.abs(mean - 3.08), String(mean)).toBeLessThanOrEqual(halfWidth! + 0.005);
  });

  // Circuit of a crew of O operators and M molds: removal / min(O, M), derived by hand [C].
  it("sets the ideal cycle when the crew is the slowest circuit", () => {
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

describe("walks", () => {
  const mold: FixedStation = { recharge: 0, drop: 0, close: 0, cool: 10, remove: 2, by: "operator" };
  const walked = (stations: readonly FixedStation[], length: number, more: Partial<Scenario> = {}): Scenario =>
    takeawayCell({ stations, shift: 0, operators: 1, length }, more.takeaway ?? [], {
      walk: always(1.5),
      cavities: 2,
      ...more,
    });

  it("happen once when there is only one mold", () => {
    // Cooling until 10, walk 10-11.5, removal 11.5-13.5, cooling until 23.5, then removal without a walk until 25.5.
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
      "10 operator on the way",
      "11.5 removal",
      "13.5 cooling",
      "23.5 removal",
    ]);
  });

  it("from mold to mold prolong the wait of the next mold", () => {
    // Both are ready at 10. Left: walk 10-11.5, removal 11.5-13.5. Right: walk 13.5-15, removal 15-17. Left is ready at 23.5.
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
    expect(statesOf(two, "right")).toEqual([
      "0 cooling",
      "10 no operator free",
      "13.5 operator on the way",
      "15 removal",
      "17 cooling",
    ]);
  });

  it("happen once when the operator only packs", () => {
    const stations = ["left", "right"].map((name): FixedStation => ({ ...mold, name, by: "machine" }));
    const packing = server("packing", always(1), { by: "operator", buffer: 40 });
    const cell = walked(stations, 4000, { takeaway: [packing], taskOrder: ["removal", "packing"] });
    const walks = [...eventRecorder(cell)(1)].filter(
      ({ resource, state }) => resource === "operator 1" && state === "walking",
    );
    expect(walks).toHaveLength(1);
  });
});

describe("priorities of tasks", () => {
  const mold: FixedStation = { name: "left", recharge: 0, drop: 0, close: 0, cool: 10, remove: 2, by: "operator" };
  const packs = (taskOrder: NonNullable<Scenario["taskOrder"]>, cool = mold.cool): Scenario =>
    takeawayCell(
      { stations: [{ ...mold, cool }], shift: 0, operators: 1, length: 40 },
      [server("packing", always(3), { by: "operator", buffer: 20 })],
      { cavities: 4, taskOrder },
    );

  it("put removal before packing when removal comes first", () => {
    // Removal 10-12, four parts are packed 12-24. The mold is ready at 22 and waits for the end of the fourth packing.
    const cell = packs(["removal", "clearing", "repair", "packing"]);
    expect(statesOf(cell, "left").slice(0, 6)).toEqual([
      "0 cooling",
      "10 removal",
      "12 cooling",
      "22 no operator free",
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

  it("put tasks that are not named last", () => {
    // Removal 8-10. The mold is ready at 18, in the third packing from 16 to 19; a fourth part waits.
    expect(statesOf(packs(["removal"], 8), "left").slice(3, 5)).toEqual(["18 no operator free", "19 removal"]);
  });

  it("put packing before removal when packing comes first: the mold waits until no part is left", () => {
    const packingFirst = takeawayCell(
      { stations: [{ ...mold, cool: 8 }], shift: 0, operators: 1, length: 40 },
      [server("packing", always(3), { by: "operator", buffer: 20 })],
      { cavities: 4, taskOrder: ["packing", "removal", "clearing", "repair"] },
    );
    // Removal 8-10, packing 10-22. The mold is ready at 18; removal 22-24, after the last part.
    expect(statesOf(packingFirst, "left").slice(3, 5)).toEqual(["18 no operator free", "22 removal"]);
    const removalFirst = { ...packingFirst, taskOrder: ["removal", "packing", "clearing", "repair"] as const };
    expect(statesOf(removalFirst, "left").slice(3, 5)).toEqual(["18 no operator free", "19 removal"]);
  });
});

describe("requests of one task", () => {
  it("are served in the order of the requests, not in the order of the stations", () => {
    // Removal of left 1-5, of middle 5-9. Left is ready again at 6, but right has waited since 2.
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

  it("that begin while the operator walks to the mold do not block the operator who ends them", () => {
    const scenario = text(
      "stops: [{ name: jam, resource: every station, clock: calendar, between: { exponential: 60 s }, repair: 5 s, by: operator }]",
    );
    const record = runCell(planCell(scenario), { replication: 1 });
    expect(record.standstill).toBeUndefined();
    expect(record.stops.length).toBeGreaterThan(1000);
    expect(record.stations[1]!.parts).toBeGreaterThan(1000);
  });

  it("of a server hold its part, and each of its places has its own stream of stops", () => {
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

  it("is taken from the critical path only when the order of parts and tasks is fixed", () => {
    const one = takeawayCell({ stations: [mold], shift: 0.2 }, steady);
    expect(method(one)).toContain("exact");
    expect(method({ ...one, takeaway: [{ ...steady[0]!, rejects: 0.01 }] })).toContain("difference");
    expect(method({ ...one, takeaway: [{ ...steady[0]!, places: 2 }] })).toContain("difference");
    expect(method({ ...one, takeaway: [{ ...steady[0]!, by: "operator" }] })).toContain("difference");
    expect(method({ ...one, takeaway: [{ ...steady[0]!, by: "operator" }], operators: 1 })).toContain("exact");
    expect(method({ ...one, walk: always(1) })).toContain("difference");
  });
});
