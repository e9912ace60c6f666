// Holds step tables with every feature of the table language to timelines calculated by hand and to closed forms [C].
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { cycleTable } from "#cell/delivery/cycleTable.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { StepTable, StopRule } from "#engine/compiler/stepTable.ts";
import type { Scenario } from "#scenario/scenario.ts";
import {
  accumulatorHeads,
  breakWhileCooling,
  clockOnWorkingTime,
  commonAccumulator,
  continuousExtrusion,
  stoppedStation,
  takeawayWithRoomForOne,
  type CellTimes,
  type ContinuousTimes,
} from "../../support/designTables.ts";
import { runTable } from "../../support/runTable.ts";

/** Ticks of `turns` whole turns of all stations after the transient. */
function turnTicks(table: StepTable, stations: number, turns: number): number {
  const settled = 60 * stations;
  const run = runTable(table, 36_000);
  const shots = run.ticksOf("shots");
  expect(shots.length).toBeGreaterThan(settled + turns * stations);
  const last = shots.length - 1;
  return shots[last]! - shots[last - turns * stations]!;
}

const micro = (count: number): Distribution => ({ kind: "fixed", value: count / 1e6 });

/** Times in ticks of 1 µs. */
const oneStation: Scenario = {
  name: "gate",
  title: "",
  delivery: { kind: "reciprocating-screw", rechargeStarts: "valve-neutral", shotFor: "served" },
  valve: { shift: micro(1), dispatch: "first-ready" },
  stations: [
    {
      name: "only",
      cavities: 1,
      product: "bottle",
      partMass: 0.05,
      flashMass: 0.01,
      drop: { by: "time", time: micro(2) },
      recharge: { by: "time", time: micro(5) },
      close: micro(2),
      blow: micro(1),
      cool: micro(8),
      vent: micro(1),
      open: micro(2),
      remove: { time: micro(1), by: "machine" },
      extra: [],
      priority: 1,
    },
  ],
  operators: 0,
  run: { length: 1, replications: 1, seed: "gate", warmup: 0, start: "running" },
};

const turns = 6;
const time = fc.integer({ min: 1, max: 20 });
const stations = fc.integer({ min: 1, max: 6 });
const cellTimes: fc.Arbitrary<CellTimes> = fc.record({ r: time, d: time, v: time, m: time, stations });

describe("the reciprocating screw, with the cell's own table", () => {
  it("shifts, drops, and recharges while the mold closes, cools and opens", () => {
    // Shift 0-1, drop 1-3, shift to neutral 3-4, recharge 4-9, mold phase 3-17 (close 2, blow 1, cool 8, vent 1, open 2),
    // removal 17-18. The screw holds its shot from 9 to 18.
    const run = runTable(cycleTable(oneStation), 19);
    expect(run.statesOf("plasticator")).toEqual([
      "0 valve shifting",
      "1 delivering",
      "3 valve shifting",
      "4 recharging",
      "9 holding a full shot",
      "18 valve shifting",
      "19 delivering",
    ]);
    expect(run.statesOf("only")).toEqual([
      "0 valve shifting to it",
      "1 parison drop",
      "3 closing",
      "5 blowing",
      "6 cooling",
      "14 venting",
      "15 opening",
      "17 removal",
      "18 valve shifting to it",
      "19 parison drop",
    ]);
    expect(run.statesOf("valve").slice(0, 4)).toEqual(["0 shifting", "1 open to only", "3 shifting", "4 neutral"]);
  });
});

describe("accumulator heads with a chamber for each station", () => {
  it("are filled while another one drops, with a shift right after each fill", () => {
    // Shift 0-1, fill 1: 1-5, shift 5-6, fill 2: 6-10, shift 10-11. Drop 1: 5-8, mold 8-13. Chamber 1 is empty at 8 and filled
    // 11-15, drop 1 again at 15 (mold clear at 13). r + v = 5 a shot is critical: (d + m)/2 = 4, (r + d)/2 = 3.5.
    const run = runTable(accumulatorHeads({ r: 4, d: 3, v: 1, m: 5, stations: 2 }), 20);
    expect(run.statesOf("extruder").slice(0, 6)).toEqual([
      "0 valve shifting",
      "1 filling",
      "5 valve shifting",
      "6 filling",
      "10 valve shifting",
      "11 filling",
    ]);
    expect(run.statesOf("station 1")).toEqual([
      "0 awaiting melt",
      "5 parison drop",
      "8 molding",
      "13 awaiting melt",
      "15 parison drop",
      "18 molding",
    ]);
    expect(run.statesOf("station 2").slice(0, 3)).toEqual(["0 awaiting melt", "10 parison drop", "13 molding"]);
  });

  it("make the extruder wait when they are full", () => {
    // One head: shift 0-1, fill 1-5, shift 5-6, drop 5-8, fill 8-12 (mold 8-28), full until 28, drop 28-31.
    const run = runTable(accumulatorHeads({ r: 4, d: 3, v: 1, m: 20, stations: 1 }), 33);
    expect(run.statesOf("extruder")).toEqual([
      "0 valve shifting",
      "1 filling",
      "5 valve shifting",
      "6 all heads full",
      "8 filling",
      "12 valve shifting",
      "13 all heads full",
      "31 filling",
    ]);
  });

  test("have the period max{ r + v, (d + m)/M, (r + d)/M }", () => {
    fc.assert(
      fc.property(cellTimes, (times) => {
        const { r, d, v, m, stations: M } = times;
        expect(turnTicks(accumulatorHeads(times), M, turns)).toBe(turns * Math.max(M * (r + v), d + m, r + d));
      }),
      { seed: 20260711 },
    );
  });
});

describe("a common chamber before the valve", () => {
  it("fills until it is full, and again after the start of the drop", () => {
    // The first shot is complete at 6, shift 6-9. Ahead 6-8, chamber full 8-9, rest 9-13. Drop 9-11, shift to neutral 11-14,
    // shift to the other station 14-17. Ahead 13-15, full 15-17, rest 17-21.
    const times = { r: 6, d: 2, v: 3, m: 7, stations: 2, ahead: 2 };
    const run = runTable(commonAccumulator(times), 21);
    expect(run.statesOf("extruder")).toEqual([
      "0 filling",
      "8 chamber full",
      "9 filling",
      "15 chamber full",
      "17 filling",
    ]);
    expect(run.statesOf("station 1")).toEqual([
      "0 awaiting melt",
      "6 valve shifting to it",
      "9 parison drop",
      "11 molding",
      "18 awaiting melt",
    ]);
    expect(run.statesOf("station 2")).toEqual([
      "0 awaiting melt",
      "14 valve shifting to it",
      "17 parison drop",
      "19 molding",
    ]);
  });

  test("has the period max{ r + max(0, v − (A − S)/Q), d + 2v, (v + d + m)/M }", () => {
    // (A − S)/Q is the time to fill the chamber beyond a shot, up to a second whole shot.
    const share = fc.integer({ min: 0, max: 20 });
    fc.assert(
      fc.property(cellTimes, share, (times, part) => {
        const { r, d, v, m, stations: M } = times;
        const ahead = Math.min(part, r);
        const period = Math.max(M * (r + Math.max(0, v - ahead)), M * (d + 2 * v), v + d + m);
        expect(turnTicks(commonAccumulator({ ...times, ahead }), M, turns)).toBe(turns * period);
      }),
      { seed: 20260712 },
    );
  });
});

describe("continuous extrusion", () => {
  it("cuts on time when the mold is ready, and makes a tail when it is late", () => {
    // One mold, P 10: in 0-2, waits until 7 (P − k − u), closes 7-9, cuts 9-10, out 10-12, molding 12-20, in 20-22. The parison
    // is due at 17, so the mold closes 22-24 and cuts 24-25. Full length was reached at 20, P after the cut at 10: tail 20-25.
    const run = runTable(continuousExtrusion({ P: 10, i: 2, k: 2, u: 1, o: 2, b: 8, stations: 1 }), 26);
    expect(run.statesOf("station 1")).toEqual([
      "0 travel in",
      "2 awaiting melt",
      "7 closing",
      "9 cutting",
      "10 travel out",
      "12 molding",
      "20 travel in",
      "22 closing",
      "24 cutting",
      "25 travel out",
    ]);
    expect(run.statesOf("screw")).toEqual([
      "0 extruding a parison",
      "20 extruding to regrind",
      "25 extruding a parison",
    ]);
  });

  test("has the period max{ P, i + k + u + o, (i + k + u + o + b)/M }", () => {
    const long = fc.integer({ min: 0, max: 60 });
    const any: fc.Arbitrary<ContinuousTimes> = fc.record({
      P: long,
      i: time,
      k: time,
      u: time,
      o: time,
      b: long,
      stations,
    });
    fc.assert(
      fc.property(any, (drawn) => {
        const times = { ...drawn, P: Math.max(drawn.P, drawn.k + drawn.u) };
        const { P, i, k, u, o, b, stations: M } = times;
        const zone = i + k + u + o;
        expect(turnTicks(continuousExtrusion(times), M, turns)).toBe(turns * Math.max(M * P, M * zone, zone + b));
      }),
      { seed: 20260713 },
    );
  });
});

describe("a station that stops", () => {
  const rules: readonly StopRule[] = ["finish", "hold", "scrap"];
  // Without a stop: shift 0, drop 1, close 3, cool 5, open 11, ready 13, shift to neutral 3-4, recharge 4-16, next shift 16.
  const start = ["0 valve shifting to it", "1 parison drop"];
  const upTo = (table: StepTable): readonly string[] => runTable(table, 20).statesOf("station");

  it("cycles without interruption when no stop occurs", () => {
    const undisturbed = ["3 closing", "5 cooling", "11 opening", "13 awaiting melt", "16 valve shifting to it"];
    expect(upTo(stoppedStation(90, 1, "hold"))).toEqual([...start, ...undisturbed, "17 parison drop", "19 closing"]);
  });

  it.each(rules)("while it waits: gets no shot before the end of the stop (%s)", (rule) => {
    const before = [...start, "3 closing", "5 cooling", "11 opening", "13 awaiting melt", "14 stopped"];
    expect(upTo(stoppedStation(14, 4, rule))).toEqual([...before, "18 valve shifting to it", "19 parison drop"]);
    const short = ["15 awaiting melt", "16 valve shifting to it", "17 parison drop", "19 closing"];
    expect(upTo(stoppedStation(14, 1, rule))).toEqual([...before, ...short]);
  });

  it("in the drop, finish: completes the drop, and delays the close", () => {
    const rest = ["3 stopped", "7 closing", "9 cooling", "15 opening", "17 valve shifting to it", "18 parison drop"];
    const run = runTable(stoppedStation(2, 5, "finish"), 19);
    expect(run.statesOf("station")).toEqual([...start, ...rest]);
    expect(run.statesOf("screw").slice(0, 5)).toEqual([
      "0 valve shifting",
      "1 delivering",
      "3 valve shifting",
      "4 recharging",
      "16 holding a full shot",
    ]);
  });

  it.each(["hold", "scrap"] as const)(
    "in the drop, %s: loses the melt to regrind, shifts the valve to neutral, and is cleared",
    (rule) => {
      const run = runTable(stoppedStation(2, 5, rule), 16);
      const rest = ["2 stopped", "7 being cleared", "10 awaiting melt", "15 valve shifting to it", "16 parison drop"];
      expect(run.statesOf("station")).toEqual([...start, ...rest]);
      expect(run.statesOf("screw").slice(2, 5)).toEqual(["2 valve shifting", "3 recharging", "15 valve shifting"]);
      expect(run.statesOf("operator")).toEqual(["0 free", "7 clearing", "10 free"]);
      expect([run.count("shots to regrind"), run.count("parts")]).toEqual([1, 0]);
    },
  );

  it("in the close, finish: completes the close and cools during the stop", () => {
    const rest = [
      "3 closing",
      "5 cooling",
      "11 opening",
      "13 awaiting melt",
      "16 valve shifting to it",
      "17 parison drop",
    ];
    expect(upTo(stoppedStation(4, 5, "finish"))).toEqual([...start, ...rest, "19 closing"]);
  });

  it.each(["hold", "scrap"] as const)(
    "in the close, %s: loses the shot, because a close before pinch cannot be held",
    (rule) => {
      const rest = ["3 closing", "4 stopped", "9 being cleared", "12 awaiting melt", "16 valve shifting to it"];
      const run = runTable(stoppedStation(4, 5, rule), 16);
      expect(run.statesOf("station")).toEqual([...start, ...rest]);
      expect(run.count("shots to regrind")).toBe(1);
    },
  );

  it.each(rules)("while it cools: cools on, and delays the opening (%s)", (rule) => {
    const rest = ["3 closing", "5 cooling", "11 stopped", "13 opening", "15 awaiting melt", "16 valve shifting to it"];
    expect(upTo(stoppedStation(6, 7, rule))).toEqual([...start, ...rest, "17 parison drop", "19 closing"]);
  });

  it("in the opening, finish: completes the opening, and then waits for the end of the stop", () => {
    const rest = ["3 closing", "5 cooling", "11 opening", "13 stopped", "17 valve shifting to it", "18 parison drop"];
    expect(upTo(stoppedStation(12, 5, "finish"))).toEqual([...start, ...rest, "20 closing"]);
  });

  it("in the opening, hold: completes it after the stop, and has the stop as a segment of its critical path", () => {
    const rest = ["3 closing", "5 cooling", "11 opening", "12 stopped", "17 opening", "18 valve shifting to it"];
    const run = runTable(stoppedStation(12, 5, "hold"), 19);
    expect(run.statesOf("station")).toEqual([...start, ...rest, "19 parison drop"]);
    expect(run.chainOf("station")).toEqual({
      "station: shift to port": 2,
      "station: drop": 2,
      "station: close": 2,
      "station: cool": 6,
      "station: open": 2,
      "station: stopped": 5,
    });
  });

  it("in the opening, scrap: loses the part and is cleared", () => {
    const rest = ["3 closing", "5 cooling", "11 opening", "12 stopped", "17 being cleared", "20 valve shifting to it"];
    const run = runTable(stoppedStation(12, 5, "scrap"), 20);
    expect(run.statesOf("station")).toEqual([...start, ...rest]);
    expect([run.count("shots to regrind"), run.count("parts")]).toEqual([1, 0]);
  });

  it("while it cools, hold: has the rest of the stop as a segment of its critical path", () => {
    // Cooling ends at 11, the stop lasts from 6 to 13: it delays the opening by 2 of its 7 ticks.
    expect(runTable(stoppedStation(6, 7, "hold"), 14).chainOf("station")).toEqual({
      "station: shift to port": 1,
      "station: drop": 2,
      "station: close": 2,
      "station: cool": 6,
      "station: stopped": 2,
      "station: open": 1,
    });
  });
});

describe("operators, takeaway and clocks", () => {
  it("a break of the only operator during cooling delays the removal, not the cooling", () => {
    // Drop 0-2, cooling 2-10, break 7-13, removal 13-14, then without a break: drop 14-16, cooling 16-24, removal 24-25.
    const run = runTable(breakWhileCooling(), 25);
    expect(run.statesOf("station")).toEqual([
      "0 parison drop",
      "2 cooling",
      "10 awaiting removal",
      "13 removal",
      "14 parison drop",
      "16 cooling",
      "24 removal",
      "25 parison drop",
    ]);
    expect(run.statesOf("operator 1")).toEqual([
      "0 free",
      "7 on break",
      "13 removing",
      "14 free",
      "24 removing",
      "25 free",
    ]);
  });

  it("a takeaway with room for one part blocks the mold", () => {
    // Molding 0-4. The conveyor carries 4-13, 13-22. The second part is ready at 8 and waits until 13, the third until 22.
    const run = runTable(takeawayWithRoomForOne(), 23);
    expect(run.statesOf("station")).toEqual([
      "0 molding",
      "8 awaiting takeaway",
      "13 molding",
      "17 awaiting takeaway",
      "22 molding",
    ]);
    expect(run.statesOf("conveyor")).toEqual(["0 starved", "4 working"]);
    expect(run.ticksOf("parts")).toEqual([4, 13, 22]);
  });

  it("a clock on working time pauses while its station is starved", () => {
    // Work 0-3 and 10-12 add up to 5: failure at 12, repair 12-14, the held tick 14-15. Then 1 + 3 (20-23) + 1: failure at 31.
    const run = runTable(clockOnWorkingTime(), 36);
    expect(run.statesOf("station")).toEqual([
      "0 working",
      "3 starved",
      "10 working",
      "12 stopped",
      "14 working",
      "15 starved",
      "20 working",
      "23 starved",
      "30 working",
      "31 stopped",
      "33 working",
      "35 starved",
    ]);
  });
});
