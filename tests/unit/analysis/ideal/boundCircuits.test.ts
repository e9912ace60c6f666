// Bounds of the period for any order of stations, the times of steps, and the pace of the screw; all values by hand.
import { describe, expect, it } from "vitest";
import { boundCircuits } from "#analysis/ideal/boundCircuits.ts";
import { earliestStarts } from "#analysis/ideal/earliestStarts.ts";
import { findCircuit } from "#analysis/ideal/findCircuit.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { matchScrew } from "#analysis/ideal/matchScrew.ts";
import { maxPlus } from "#analysis/ideal/maxPlus.ts";
import { areEqual } from "#analysis/ideal/orderedShots.ts";
import { screwPace } from "#analysis/ideal/screwPace.ts";
import { stepTimes } from "#analysis/ideal/stepTimes.ts";
import { wholeActive, wholeStates } from "#analysis/ideal/wholeServers.ts";
import type { DeliverySpec, Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../../support/cellScenario.ts";
import { fixedCell, type FixedCell, type FixedStation } from "../../../support/fixedCell.ts";
import { always, server, takeawayCell } from "../../../support/takeawayCell.ts";

const first: FixedStation = { name: "A", recharge: 4, drop: 2, close: 1, cool: 8, remove: 1 };
const second: FixedStation = { name: "B", recharge: 3, drop: 1, close: 1, cool: 10, remove: 2 };
const cellOf = (more: Partial<FixedCell> = {}): Scenario =>
  fixedCell({ stations: [first, second], shift: 0.25, ...more });
const near = (value: number) => expect.closeTo(value, 6) as number;
const harmonic = (...times: readonly number[]) => 1 / times.reduce((sum, each) => sum + 1 / each, 0);

const boundsOf = (scenario: Scenario) =>
  boundCircuits(scenario).map(({ name, secondsPerShot, slackSeconds, critical }) => [name, secondsPerShot, slackSeconds, critical]); // prettier-ignore

describe("the bounds of different stations", () => {
  // One turn of A: shift 0.25, drop 2, close 1, cool 8, remove 1; of B: 0.25 + 1 + 1 + 10 + 2.
  const stations = harmonic(12.25, 14.25);

  it("with a reciprocating screw are its fastest shot, and all stations without waits", () => {
    // B's charge 3, shift 0.25, drop 1, shift back 0.25.
    expect(boundsOf(cellOf())).toEqual([
      ["all stations, without waits", near(stations), 0, true],
      ["plasticator, every shot the fastest", near(4.5), near(stations - 4.5), false],
    ]);
    const slow = [first, second].map((each) => ({ ...each, recharge: each.recharge + 3 }));
    expect(boundsOf(cellOf({ stations: slow }))[0]).toEqual(["plasticator, every shot the fastest", near(7.5), 0, true]); // prettier-ignore
  });

  it("have the crew where operators remove the parts of every station", () => {
    const byOperator = [first, second].map((each) => ({ ...each, by: "operator" as const }));
    expect(boundsOf(cellOf({ stations: byOperator, operators: 1 }))[2]).toEqual(["crew", near(1), near(stations - 1), false]); // prettier-ignore
    expect(boundsOf(cellOf({ stations: byOperator, operators: 2 }))[2]?.[1]).toEqual(near(0.5));
    expect(boundsOf(cellOf({ stations: [first, byOperator[1]!], operators: 1 }))).toHaveLength(2);
  });

  it("with a chamber in each head are its fill and its drop, all of them together", () => {
    const delivery: DeliverySpec = { kind: "accumulator-head", accumulator: "per-station" };
    // The screw fills B in 3 s after a shift of 0.25 s; a chamber is filled and emptied in 6 and in 4 s. No shift is in a mold's turn.
    expect(boundsOf(cellOf({ delivery }))).toEqual([
      ["all stations, without waits", near(harmonic(12, 14)), 0, true],
      ["plasticator, every shot the fastest", near(3.25), near(harmonic(12, 14) - 3.25), false],
      ["chamber of each head", near(harmonic(6, 4)), near(harmonic(12, 14) - 2.4), false],
    ]);
  });

  it("with a common chamber are the charge and the valve", () => {
    const delivery: DeliverySpec = { kind: "accumulator-head", accumulator: "common", shotCapacity: 0.1 };
    const found = new Map(boundsOf(cellOf({ delivery })).map(([name, seconds]) => [name, seconds]));
    // Shift 0.25, drop 1, shift back 0.25.
    expect(found.get("valve")).toEqual(near(1.5));
    expect(found.get("plasticator, every shot the fastest")).toEqual(near(3));
  });

  it.each([
    // In, close, cut, out: A 1 + 1 + 0.5 + 2, B 2 + 1 + 0.5 + 3; shared without the way out or without the way in.
    ["exclusive", 4.5],
    ["shared", 3.5],
  ] as const)("in continuous extrusion are the %s die zone, and the parison", (dieZone, zone) => {
    const delivery: DeliverySpec = { kind: "continuous", rate: "fixed", removal: "mold", dieZone };
    const traveling = [{ ...first, drop: 0, travel: [1, 0.5, 2] as const }, { ...second, drop: 0, travel: [2, 0.5, 3] as const }]; // prettier-ignore
    const found = new Map(
      boundsOf(cellOf({ delivery, stations: traveling, shift: 0 })).map(([name, seconds]) => [name, seconds]),
    );
    expect(found.get("die zone")).toEqual(near(zone));
    expect(found.get("plasticator, every shot the fastest")).toEqual(near(3));
    // A 4.5 + 8 + 1, B 6.5 + 10 + 2.
    expect(found.get("all stations, without waits")).toEqual(near(harmonic(13.5, 18.5)));
  });

  it("have each server by the parts of the smallest shot, in all its places", () => {
    const cell = takeawayCell(
      { stations: [first, second], shift: 0.25 },
      [server("trim", always(9), { places: 2 }), server("pack", always(1))],
      { cavities: 3 },
    );
    const mixed = { ...cell, stations: cell.stations.map((each, k) => ({ ...each, cavities: 3 + k })) };
    const found = boundCircuits(mixed);
    expect(found.find(({ name }) => name === "trim")).toMatchObject({ secondsPerShot: near(13.5), critical: true });
    expect(found.find(({ name }) => name === "pack")).toMatchObject({ secondsPerShot: near(3), slackSeconds: near(10.5), owner: { kind: "server", name: "pack" } }); // prettier-ignore
    const own = { ...mixed, takeaway: [server("trim", always(9), { perStation: true })] };
    // 3 × 9 s and 4 × 9 s in parallel.
    expect(boundCircuits(own).find(({ name }) => name === "trim")).toMatchObject({ secondsPerShot: near(harmonic(27, 36)), owner: null }); // prettier-ignore
  });

  it("are no longer than the period of an order", () => {
    for (const dispatch of ["first-ready", "alternate"] as const) {
      const scenario = cellOf({ dispatch });
      expect(boundCircuits(scenario)[0]!.secondsPerShot).toBeLessThanOrEqual(idealCycle(scenario).secondsPerShot + 1e-9); // prettier-ignore
    }
  });
});

describe("equal stations", () => {
  it("are equal but for name, priority and product", () => {
    const [one, other] = cellOf({ stations: [first, { ...first, name: "C", priority: 7 }] }).stations;
    expect(areEqual([one!, { ...other!, product: "canister" }])).toBe(true);
    expect(areEqual(cellOf().stations)).toBe(false);
  });
});

describe("the times of steps", () => {
  const times = (scenario: Scenario) =>
    stepTimes(scenario)
      .filter(({ seconds }) => seconds > 0)
      .map(({ resource, step, station, seconds }) => [resource, step, station, seconds]);

  it("are those of each station; a charge is that of the shot that it replaces", () => {
    expect(times(cellOf())).toEqual([
      ["plasticator", "recharge", "A", 4],
      ["plasticator", "recharge", "B", 3],
      ["valve", "shift to neutral", null, 0.25],
      ["valve", "shift to port", "A", 0.25],
      ["A", "drop", "A", 2],
      ["A", "close", "A", 1],
      ["A", "cool", "A", 8],
      ["A", "remove", "A", 1],
      ["valve", "shift to port", "B", 0.25],
      ["B", "drop", "B", 1],
      ["B", "close", "B", 1],
      ["B", "cool", "B", 10],
      ["B", "remove", "B", 2],
    ]);
  });

  it("have one row for the places of a server, and none for a cold start", () => {
    const cell = takeawayCell({ stations: [first], shift: 0.25, start: "cold" }, [server("trim", always(9), { places: 3 })]); // prettier-ignore
    const found = times(cell).map(([resource, step]) => `${String(resource)} ${String(step)}`);
    expect(found.filter((each) => each.startsWith("trim"))).toHaveLength(1);
    expect(found.filter((each) => each.startsWith("plasticator"))).toEqual(["plasticator recharge"]);
  });

  it("of a walk are those from another place", () => {
    const text = cellText(2, "crew: { operators: 1, walk: 1.5 s }").replace("remove: { time: 0.8 s }", "remove: { time: 0.8 s, by: operator }"); // prettier-ignore
    const walks = stepTimes(scenarioOf(text)).filter(({ role }) => role === "crew.walk");
    expect(walks.map(({ station, seconds }) => [station, seconds])).toEqual([["station 1", 1.5], ["station 2", 1.5]]); // prettier-ignore
  });

  it("of a parison are those of the mold after the one that took the last", () => {
    const delivery: DeliverySpec = { kind: "continuous", rate: "fixed", removal: "mold", dieZone: "shared" };
    const stations = [first, second, { ...first, name: "C", recharge: 5 }].map((each) => ({ ...each, drop: 0, travel: [1, 0.5, 2] as const })); // prettier-ignore
    const found = times(cellOf({ delivery, stations, shift: 0 })).filter(([resource]) => resource === "plasticator");
    expect(found.map(([, , station, seconds]) => [station, seconds])).toEqual([["A", 4], ["B", 3], ["C", 5]]); // prettier-ignore
  });
});

describe("the pace of the screw", () => {
  const continuous = (more: object = {}): DeliverySpec => ({
    kind: "continuous",
    rate: "matched",
    removal: "mold",
    dieZone: "exclusive",
    ...more,
  });
  const stations = [{ ...first, drop: 0, travel: [1, 0.5, 2] as const }];
  const paceOf = (more: object = {}, recharge = 4) => {
    const cell = cellOf({ delivery: continuous(more), stations: stations.map((each) => ({ ...each, recharge })), shift: 0 }); // prettier-ignore
    const settled = matchScrew(cell);
    return screwPace(settled, idealCycle(settled));
  };
  // A mold takes 1 + 1 + 0.5 + 2 + 8 + 1 = 13.5 s; a shot has 2 × (42 + 12) g.
  const shot = 0.108;

  it("is that of the molds within its range", () => {
    const pace = paceOf()!;
    expect(pace).toMatchObject({ kind: "matched", fullParison: 4, parison: expect.closeTo(13.5, 5) as number });
    expect(pace.excessShare).toBeCloseTo(0, 6);
    expect([pace.rates?.full, pace.rates?.now]).toEqual([expect.closeTo(shot / 4, 8), expect.closeTo(shot / 13.5, 7)]);
  });

  it("is its slowest where the molds are slower, and full where they are quicker", () => {
    const slowest = paceOf({ slowestRate: shot / 10 })!;
    expect(slowest).toMatchObject({ kind: "slowest", parison: near(10), fullParison: 4 });
    // 10 s of parison in 13.5 s.
    expect(slowest.excessShare).toBeCloseTo(1 - 10 / 13.5, 6);
    expect(paceOf({}, 20)).toMatchObject({ kind: "full", parison: 20, fullParison: 20, excessShare: 0 });
  });

  it("may be fixed, and then sends the rest to regrind", () => {
    const pace = paceOf({ rate: "fixed" })!;
    expect(pace).toMatchObject({ kind: "fixed", parison: 4, fullParison: 4, excessShare: near(1 - 4 / 13.5) });
    expect(pace.rates?.now).toBe(pace.rates?.full);
    expect(screwPace(cellOf(), idealCycle(cellOf()))).toBeUndefined();
    expect(matchScrew(cellOf())).toEqual(cellOf());
  });
});

describe("a server of several places", () => {
  const servers = [{ name: "trim", places: ["trim 1", "trim 2"] }] as unknown as Parameters<typeof wholeStates>[1];
  const state = (resource: string, name: string, share: number) =>
    ({ resource, state: name, kind: "working", isActive: true, share }) as const;

  it("has the mean share of its places in each state, in the order of the first", () => {
    const shares = [state("A", "cooling", 0.9), state("trim 1", "working", 0.5), state("trim 1", "idle", 0.5), state("trim 2", "working", 0.1), state("trim 2", "idle", 0.9)]; // prettier-ignore
    expect(wholeStates(shares, servers).map(({ resource, state: name, share }) => [resource, name, share])).toEqual([
      ["A", "cooling", 0.9],
      ["trim", "working", 0.3],
      ["trim", "idle", 0.7],
    ]);
    expect(wholeStates(shares)).toEqual(shares);
    // A state of one place alone is half of the server's time.
    expect(wholeStates([state("trim 2", "blocked", 0.5)], servers)[0]).toMatchObject({ resource: "trim", share: 0.25 });
  });

  it("has the longest active period whenever one of its places has", () => {
    const shares = [{ resource: "trim 1", sole: 0.25, shifting: 0.125 }, { resource: "A", sole: 0.5, shifting: 0 }, { resource: "trim 2", sole: 0.125, shifting: 0.0625 }]; // prettier-ignore
    expect(wholeActive(shares, servers)).toEqual([
      { resource: "trim", sole: 0.375, shifting: 0.1875 },
      { resource: "A", sole: 0.5, shifting: 0 },
    ]);
  });
});

describe("the earliest starts of a period", () => {
  it("are the longest ways from a critical node, less a period for each token", () => {
    const edge = (from: number, to: number, weight: number, tokens: number) => ({ from, to, weight, tokens });
    // 0 → 1 → 0 with 7 + 3 and one token: a period of 10. Node 2 follows 0 after 4 and 1 after 1; nothing leads to node 3.
    const graph = { nodes: 4, edges: [edge(0, 1, 7, 0), edge(1, 0, 3, 1), edge(0, 2, 4, 0), edge(1, 2, 1, 0), edge(1, 2, 12, 1), edge(3, 0, 1, 1)] }; // prettier-ignore
    expect(earliestStarts(graph, { ticks: 10, tokens: 1 }, 0)).toEqual([0, 7, 9, 0]);
    expect(earliestStarts(graph, { ticks: 10, tokens: 1 }, 1)).toEqual([-7, 0, 2, 0]);
  });
});

describe("graphs", () => {
  const edge = (from: number, to: number, weight: number, tokens: number) => ({ from, to, weight, tokens });

  it("have the same earliest starts in any order of edges", () => {
    const edges = [edge(0, 1, 5, 0), edge(1, 2, 6, 0), edge(2, 3, 7, 0), edge(3, 0, 2, 1)];
    for (const listed of [edges, edges.toReversed()])
      expect(earliestStarts({ nodes: 4, edges: listed }, { ticks: 20, tokens: 1 }, 0)).toEqual([0, 5, 11, 18]);
  });

  it("have a circuit behind a chain that leads nowhere", () => {
    const edges = [edge(0, 1, 1, 1), edge(1, 2, 1, 1), edge(3, 4, 1, 1), edge(4, 3, 1, 1)];
    expect(findCircuit({ nodes: 5, edges }, () => true)?.toSorted()).toEqual([2, 3]);
    expect(findCircuit({ nodes: 5, edges }, (each) => each < 3)).toBeNull();
    // A node with two chains before it is free after both.
    const joined = [edge(0, 2, 1, 1), edge(1, 2, 1, 1), edge(2, 3, 1, 1), edge(4, 4, 1, 1)];
    expect(findCircuit({ nodes: 5, edges: joined }, () => true)).toEqual([3]);
  });

  it("have the heaviest circuit wherever it is listed", () => {
    // 1 → 2 → 1 with 10 ticks a token, listed before the ring of node 0 with 1.
    const solved = maxPlus({ nodes: 3, edges: [edge(1, 2, 5, 0), edge(2, 1, 5, 1), edge(0, 0, 1, 1)] });
    expect(solved).toMatchObject({ kind: "periodic", ratio: { ticks: 10, tokens: 1 } });
  });
});
