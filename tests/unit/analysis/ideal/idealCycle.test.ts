// The schedule, the circuits and their names of single cells; all values by hand.
import { describe, expect, it } from "vitest";
import { hasSlack, passesScrew, slackPerShot } from "#analysis/ideal/idealCircuit.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { matchScrew } from "#analysis/ideal/matchScrew.ts";
import type { DeliverySpec } from "#scenario/scenario.ts";
import { fixedCell, type FixedCell, type FixedStation } from "../../../support/fixedCell.ts";
import { always, server, takeawayCell } from "../../../support/takeawayCell.ts";

const first: FixedStation = { name: "A", recharge: 4, drop: 2, close: 1, cool: 8, remove: 1 };
const cellOf = (more: Partial<FixedCell> = {}) => fixedCell({ stations: [first], shift: 0.25, ...more });
const near = (value: number) => expect.closeTo(value, 6) as number;
const circuitsOf = (ideal: ReturnType<typeof idealCycle>) =>
  ideal.circuits.map(({ name, shots, seconds, slackSeconds, critical }) => [name, shots, seconds, slackSeconds, critical]); // prettier-ignore

describe("one mold", () => {
  const ideal = idealCycle(cellOf());

  it("has the turn of the mold as its period, and the screw has the rest as slack", () => {
    // 0.25 + 2 + 1 + 8 + 1; the screw 4 + 0.25 + 2 + 0.25.
    expect([ideal.secondsPerShot, ideal.periodTicks, ideal.shotsPerPeriod]).toEqual([12.25, 12_250_000, 1]);
    expect(circuitsOf(ideal).slice(0, 2)).toEqual([
      ["A", 1, 12.25, 0, true],
      ["plasticator", 1, 6.5, 5.75, false],
    ]);
    expect(ideal.circuits[0]).toMatchObject({ owner: { kind: "station", name: "A" }, resources: ["valve", "A"] });
    expect(ideal.stationsNeeded).toBeCloseTo(12.25 / 6.5, 9);
    expect([ideal.slackOf("A", "cool"), ideal.slackOf("plasticator", "recharge"), ideal.slackOf("A", "polish")]).toEqual([0, 5.75, null]); // prettier-ignore
  });

  it("has every step as early as it can be", () => {
    const rows = ideal.schedule.filter(({ start, end }) => end > start);
    expect(rows.map(({ step, start, end, critical }) => [step, start, end, critical])).toEqual([
      ["shift to port", 0, 0.25, true],
      ["drop", 0.25, 2.25, true],
      ["close", 2.25, 3.25, true],
      ["shift to neutral", 2.25, 2.5, false],
      ["recharge", 2.5, 6.5, false],
      ["cool", 3.25, 11.25, true],
      ["remove", 11.25, 12.25, true],
    ]);
    const drop = rows.find(({ step }) => step === "drop");
    expect(drop?.occupies.toSorted()).toEqual(["A", "plasticator", "valve"]);
    expect([drop?.station, drop?.shot]).toEqual(["A", 1]);
    expect(rows.find(({ step }) => step === "recharge")?.station).toBe("");
  });
});

describe("equal molds", () => {
  const equal = (count: number) => Array.from({ length: count }, (_, k) => ({ ...first, name: `M${k + 1}` }));

  it("stand for each other under one name", () => {
    const ideal = idealCycle(cellOf({ stations: equal(2) }));
    // Two shots of the screw take 13 s, longer than a mold's 12.25.
    expect(circuitsOf(ideal).slice(0, 2)).toEqual([
      ["plasticator", 1, 6.5, 0, true],
      ["each station", 2, 12.25, 0.75, false],
    ]);
    expect([ideal.method, ideal.secondsPerShot]).toEqual(["fixed order", 6.5]);
    // Slack of the circuits through a step, for every station alike.
    expect(["M1", "M2"].map((name) => ideal.slackOf(name, "cool"))).toEqual([0.75, 0.75]);
    const drops = ideal.schedule.filter(({ step }) => step === "drop");
    expect(drops.map(({ station, shot, start }) => [station, shot, start])).toEqual([["M1", 1, 0.25], ["M2", 2, 6.75]]); // prettier-ignore
    expect(drops.map(({ occupies }) => occupies.includes("M1"))).toEqual([true, false]);
    // The second turn begins 6.5 s later, so that its removal from 17.75 s on is that of the turn before, at 4.75 s of 13 s.
    const removals = ideal.schedule.filter(({ step }) => step === "remove");
    expect(removals.map(({ resource, start, end }) => [resource, start, end])).toEqual([["M2", 4.75, 5.75], ["M1", 11.25, 12.25]]); // prettier-ignore
    expect(ideal.stationsNeeded).toBeCloseTo(12.25 / 6.5, 9);
  });

  it("need more of them for a screw that is turned down to their pace", () => {
    const delivery: DeliverySpec = { kind: "continuous", rate: "matched", removal: "mold", dieZone: "exclusive" };
    const stations = [{ ...first, drop: 0, travel: [1, 0.5, 2] as const }];
    // A mold takes 13.5 s; a parison 4 s at full rate.
    const ideal = idealCycle(matchScrew(cellOf({ delivery, stations, shift: 0 })));
    expect(ideal.stationsNeeded).toBeCloseTo(13.5 / 4, 4);
  });

  it("need no such number where they differ", () => {
    expect(idealCycle(cellOf({ stations: [first, { ...first, name: "B", cool: 9 }] })).stationsNeeded).toBeNull();
  });
});

describe("the names of circuits", () => {
  const namesOf = (more: Partial<FixedCell>) => idealCycle(cellOf(more)).circuits.map(({ name }) => name);
  const two = [first, { ...first, name: "B", cool: 9 }];

  it("say the way of a screw that waits for the closed mold", () => {
    const names = namesOf({ rechargeStarts: "mold-closed" });
    expect(names).toContain("plasticator, through the closing mold");
    expect(names).toContain("plasticator, through the valve");
  });

  it("are those of stations, of the screw with one, and of several", () => {
    const ideal = idealCycle(cellOf({ stations: two, dispatch: "alternate" }));
    expect(ideal.circuits.map(({ name }) => name)).toEqual(expect.arrayContaining(["A", "B", "plasticator"]));
    // Two turns of the screw take 13 s; B takes 13.25, A 12.25.
    expect(circuitsOf(ideal)[0]).toEqual(["B", 2, 13.25, 0, true]);
    expect(ideal.circuits.find(({ name }) => name === "A")?.slackSeconds).toBeCloseTo(1, 9);
    const drops = ideal.schedule.filter(({ step }) => step === "drop");
    expect(drops.map(({ station, shot }) => [station, shot])).toEqual([["A", 1], ["B", 2]]); // prettier-ignore
  });

  it("are those of the valve, and of a crew of more operators than molds", () => {
    const common: DeliverySpec = { kind: "accumulator-head", accumulator: "common", shotCapacity: 1 };
    const valve = idealCycle(cellOf({ delivery: common })).circuits.find(({ name }) => name === "valve");
    // Shift 0.25, drop 2, shift back 0.25.
    expect(valve).toMatchObject({ owner: { kind: "valve" }, secondsPerShot: near(2.5) });
    const byOperator = [first, { ...first, name: "B" }].map((each) => ({ ...each, by: "operator" as const }));
    const crew = idealCycle(cellOf({ stations: byOperator, operators: 20 })).circuits.find(({ name }) => name === "crew"); // prettier-ignore
    // Each of 20 operators removes the parts of every 20th shot for 1 s.
    expect(crew).toMatchObject({ shots: 20, seconds: 1, secondsPerShot: near(0.05) });
  });

  it("are those of chambers and of the crew", () => {
    const heads: DeliverySpec = { kind: "accumulator-head", accumulator: "per-station" };
    expect(namesOf({ delivery: heads })).toContain("chamber of A");
    expect(namesOf({ delivery: heads, stations: [first, { ...first, name: "B" }] })).toContain("chamber of each head");
    const byOperator = two.map((each) => ({ ...each, by: "operator" as const }));
    const ideal = idealCycle(cellOf({ stations: byOperator.map((each) => ({ ...each, remove: 20 })), operators: 1 }));
    expect(ideal.circuits[0]).toMatchObject({ name: "crew", owner: { kind: "crew" }, secondsPerShot: 20 });
  });
});

describe("a takeaway", () => {
  const cell = (trim: number, pack = 1) =>
    takeawayCell({ stations: [first], shift: 0.25 }, [server("trim", always(trim), { places: 2, buffer: 4 }), server("pack", always(pack), { buffer: 4 })], { cavities: 4 }); // prettier-ignore

  it("sets the pace by the parts of a shot in all its places", () => {
    const ideal = idealCycle(cell(8));
    // 4 × 8 / 2 s; the mold takes 12.25 s, the screw 6.5 s, packing 4 s.
    expect(ideal.secondsPerShot).toBeCloseTo(16, 9);
    expect(ideal.circuits.map(({ name, secondsPerShot, critical }) => [name, secondsPerShot, critical])).toEqual([
      ["trim", near(16), true],
      ["A", near(12.25), false],
      ["plasticator", near(6.5), false],
      ["pack", near(4), false],
    ]);
    const of = (name: string) => ideal.circuits.find((each) => each.name === name)!;
    expect([of("A").slackSeconds, of("plasticator").slackSeconds]).toEqual([near(3.75 * of("A").shots), near(9.5 * of("plasticator").shots)]); // prettier-ignore
    expect(of("trim").owner).toEqual({ kind: "server", name: "trim" });
  });

  it("may keep the crew busy, which then sets the pace as one", () => {
    const by = "operator" as const;
    const packed = takeawayCell({ stations: [{ ...first, remove: 10, by }], shift: 0.25, operators: 1 }, [server("pack", always(20), { by, buffer: 2 })]); // prettier-ignore
    // Removal 10 s and packing 20 s; the mold 0.25 + 2 + 1 + 8 + 10 s.
    expect(circuitsOf(idealCycle(packed))).toEqual([
      ["crew", 1, 30, 0, true],
      ["A", 1, 21.25, 8.75, false],
      ["pack", 1, 20, 10, false],
      ["plasticator", 1, 6.5, 23.5, false],
    ]);
  });

  it("has only a bound where an order has more than 750 steps, since the work on it grows with their cube", () => {
    const many = Array.from({ length: 60 }, (_, k) => ({ ...first, name: `M${100 + k}`, recharge: 0.1, drop: 0.1, cool: 8 + k / 10 })); // prettier-ignore
    const found = idealCycle(takeawayCell({ stations: many, shift: 0 }, [server("trim", always(0.05))], { cavities: 1 })); // prettier-ignore
    expect(found).toMatchObject({ method: "bound", shotsPerPeriod: 1, schedule: [], stationsNeeded: null });
    expect(found.slackOf("M100", "cool")).toBeNull();
  });

  it("has slack where the mold sets the pace", () => {
    const ideal = idealCycle(cell(2));
    expect(ideal.circuits[0]).toMatchObject({ name: "A", critical: true, secondsPerShot: near(12.25) });
    expect(ideal.circuits.find(({ name }) => name === "trim")).toMatchObject({ secondsPerShot: near(4), critical: false }); // prettier-ignore
  });
});

describe("a mask", () => {
  it("has a circuit of its own, from one transfer of parts to the next", () => {
    const delivery: DeliverySpec = { kind: "continuous", rate: "fixed", removal: "pin", dieZone: "exclusive" };
    const cell = cellOf({ delivery, stations: [{ ...first, drop: 0, travel: [1, 0.5, 2] }], shift: 0 });
    const extra = [{ name: "tail strip", after: "remove" as const, time: always(30) }];
    const ideal = idealCycle({ ...cell, stations: cell.stations.map((each) => ({ ...each, extra })) });
    const mask = ideal.circuits.find(({ owner }) => owner?.kind === "mask");
    expect(mask).toMatchObject({ name: "mask of A", owner: { kind: "mask", name: "mask of A" }, critical: true });
    // It removes for 1 s and strips for 30 s.
    expect(mask?.secondsPerShot).toBeCloseTo(31, 9);
  });
});

describe("a schedule", () => {
  it("begins with the first turn, also where the period is no whole number of microseconds", () => {
    const by = "operator" as const;
    const stations = Array.from({ length: 7 }, (_, k) => ({ ...first, name: `M${k + 1}`, recharge: 0.1, drop: 0.1, remove: 10, by })); // prettier-ignore
    for (const operators of [3, 6, 7]) {
      const ideal = idealCycle(cellOf({ stations, operators }));
      // Above the crew stands the turn of a mold: 0.25 + 0.1 + 1 + 8 + 10 s of seven.
      const period = Math.max(10 / operators, 19.35 / 7);
      expect(ideal.secondsPerShot).toBeCloseTo(period, 9);
      const begins = ideal.schedule.filter(({ step }) => step === "shift to port").map(({ start }) => start);
      expect(begins).toEqual(stations.map((_, k) => near(k * period)));
      for (const { start } of ideal.schedule) expect(start).toBeLessThan(7 * period - 1e-6);
    }
  });
});

describe("the rows of a schedule", () => {
  it("are in the order of their start, then shot, resource and end", () => {
    // Whole seconds, so that many rows begin at one instant.
    const whole = { name: "A", recharge: 3, drop: 1, close: 1, cool: 6, remove: 1 };
    const cells = [cellOf(), cellOf({ stations: [whole, { ...whole, name: "B", cool: 5 }], shift: 1, dispatch: "alternate" }), cellOf({ stations: [whole, { ...whole, name: "B" }, { ...whole, name: "C" }], shift: 1 })]; // prettier-ignore
    let [shots, resources, ends] = [0, 0, 0];
    for (const { schedule } of cells.map(idealCycle))
      schedule.slice(1).forEach((row, i) => {
        const before = schedule[i]!;
        expect(before.start).toBeLessThanOrEqual(row.start);
        if (before.start !== row.start) return;
        expect(before.shot).toBeLessThanOrEqual(row.shot);
        if (before.shot !== row.shot) return void (shots += 1);
        expect(before.resource <= row.resource).toBe(true);
        if (before.resource !== row.resource) return void (resources += 1);
        expect(before.end).toBeLessThanOrEqual(row.end);
        if (before.end !== row.end) ends += 1;
      });
    // Each rule decides somewhere.
    expect(Math.min(shots, resources, ends)).toBeGreaterThan(0);
  });
});

describe("a circuit", () => {
  const step = (role: "screw.recharge" | "screw.extrude" | "mold.cool") => ({ resource: "A", step: "any", role });

  it("passes the screw by its owner, else by its steps", () => {
    const owned = (kind: "screw" | "valve") => passesScrew({ owner: { kind }, steps: [step("screw.recharge")] });
    expect([owned("screw"), owned("valve"), passesScrew({ owner: { kind: "screw" }, steps: [] })]).toEqual([true, false, true]); // prettier-ignore
    const shared = (["screw.recharge", "screw.extrude", "mold.cool"] as const).map((role) => passesScrew({ owner: null, steps: [step("mold.cool"), step(role)] })); // prettier-ignore
    expect(shared).toEqual([true, true, false]);
  });

  it("has a slack a shot where the order is fixed, and never one below nothing", () => {
    const [critical, other] = idealCycle(cellOf()).circuits;
    // The screw has 6.5 of 12.25 s.
    expect([slackPerShot(critical!, { secondsPerShot: 99 }), slackPerShot(other!, { secondsPerShot: 12.25 })]).toEqual([0, 5.75]); // prettier-ignore
    expect(slackPerShot(other!, { secondsPerShot: 6 })).toBe(0);
    expect((["fixed order", "order found by running", "bound"] as const).map((method) => hasSlack({ method }))).toEqual([true, false, false]); // prettier-ignore
  });
});
