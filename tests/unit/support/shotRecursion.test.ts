// Holds the shot recursion to closed forms, to periods of an event graph, and to timelines calculated by hand.

import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { caseCount } from "../../support/caseCount.ts";
import {
  shotRecursion,
  type Durations,
  type RecursionCell,
  type StepInterval,
} from "../../support/recursions/shotRecursion.ts";

type Station = RecursionCell["stations"][number];

function station(name: string, changes: Partial<Station> = {}): Station {
  return { name, priority: 1, removal: "machine", moldSteps: ["close", "open"], ...changes };
}

function cellOf(stations: readonly Station[], changes: Partial<RecursionCell> = {}): RecursionCell {
  return {
    stations,
    dispatch: "first-ready",
    rechargeStarts: "valve-neutral",
    operators: 1,
    start: "running",
    ...changes,
  };
}

/** Fixed times for each station or for all; a step without a time is an error of the test. */
function fixedTimes(
  times: Readonly<Record<string, number | Readonly<Record<string, number>>>>,
  names: readonly string[],
): Durations {
  return (_resource, step, _n, index) => {
    const time = times[step];
    const ticks = typeof time === "object" ? time[names[index] ?? "cold"] : time;
    if (ticks === undefined) throw new Error(`no time for ${step} of ${names[index]}`);
    return ticks;
  };
}

function shotsOf(steps: readonly StepInterval[]): StepInterval[] {
  return steps
    .filter((step) => step.step === "shift to port")
    .toSorted((one, other) => one.occurrence - other.occurrence);
}

/** Ticks from shot `from` to shot `from + span`. */
function ticksBetween(steps: readonly StepInterval[], from: number, span: number): number {
  const shots = shotsOf(steps);
  const first = shots[from];
  const last = shots[from + span];
  if (first === undefined || last === undefined) throw new Error(`only ${shots.length} shots, ${from + span} wanted`);
  return last.start - first.start;
}

const dispatches = ["first-ready", "longest-since-drop", "alternate", "priority"] as const;
const recharges = ["valve-neutral", "mold-closed"] as const;

describe("two stations calculated by hand", () => {
  const names = ["left", "right"];
  const moldSteps = ["close", "cool", "open"];
  const stations = names.map((name) => station(name, { removal: "operator", moldSteps }));
  const durations = fixedTimes(
    {
      recharge: { cold: 5, left: 3, right: 4 },
      "shift to port": 1,
      "shift to neutral": 1,
      drop: 2,
      close: 2,
      cool: { left: 6, right: 2 },
      open: 1,
      remove: { left: 6, right: 3 },
    },
    names,
  );

  test("cold start, recharge after close, one operator for whom the right station waits twice", () => {
    const steps = shotRecursion(cellOf(stations, { start: "cold", rechargeStarts: "mold-closed" }), durations, 42);
    const lines = steps.map((s) => `${s.start}-${s.end} ${s.resource}: ${s.step} ${s.occurrence} (${s.station})`);
    // Calculated by hand [C]. Right requests the operator at 21 and 39, left releases them at 23 and 41. The screw waits for the
    // mold to close at 9-10, 17-18, 27-28 and 35-36, and for a mold at 22-23 and 40-41.
    expect(lines).toEqual([
      "0-5 plasticator: recharge 0 ()",
      "5-6 valve: shift to port 0 (left)",
      "6-8 left: drop 0 (left)",
      "8-10 left: close 0 (left)",
      "8-9 valve: shift to neutral 0 (left)",
      "10-16 left: cool 0 (left)",
      "10-13 plasticator: recharge 1 (left)",
      "13-14 valve: shift to port 1 (right)",
      "14-16 right: drop 0 (right)",
      "16-17 left: open 0 (left)",
      "16-18 right: close 0 (right)",
      "16-17 valve: shift to neutral 1 (right)",
      "17-23 left: remove 0 (left)",
      "18-22 plasticator: recharge 2 (right)",
      "18-20 right: cool 0 (right)",
      "20-21 right: open 0 (right)",
      "23-26 right: remove 0 (right)",
      "23-24 valve: shift to port 2 (left)",
      "24-26 left: drop 1 (left)",
      "26-28 left: close 1 (left)",
      "26-27 valve: shift to neutral 2 (left)",
      "28-34 left: cool 1 (left)",
      "28-31 plasticator: recharge 3 (left)",
      "31-32 valve: shift to port 3 (right)",
      "32-34 right: drop 1 (right)",
      "34-35 left: open 1 (left)",
      "34-36 right: close 1 (right)",
      "34-35 valve: shift to neutral 3 (right)",
      "35-41 left: remove 1 (left)",
      "36-40 plasticator: recharge 4 (right)",
      "36-38 right: cool 1 (right)",
      "38-39 right: open 1 (right)",
      "41-44 right: remove 1 (right)",
      "41-42 valve: shift to port 4 (left)",
    ]);
  });
});

describe("dispatch rules on three stations calculated by hand", () => {
  const names = ["a", "b", "c"];
  const stations = names.map((name, k) => station(name, { priority: [3, 1, 2][k] ?? 0 }));
  // From shift to ready a takes 20 ticks, b and c 6. The circuit of the screw takes 5.
  const durations = fixedTimes(
    {
      recharge: 2,
      "shift to port": 1,
      "shift to neutral": 1,
      drop: 1,
      close: 1,
      open: { a: 16, b: 2, c: 2 },
      remove: 1,
    },
    names,
  );
  const expected = {
    "first-ready": "a0 b5 c10 b15 c20 a25 b30 c35 b40 c45",
    "longest-since-drop": "a0 b5 c10 b15 a20 c25 b30 c35 a40 b45",
    alternate: "a0 b5 c10 a20 b25 c30 a40 b45",
    priority: "b0 c5 b10 c15 b20 c25 b30 c35 b40 c45",
  };
  test.each(dispatches)("%s serves the stations in the expected order", (dispatch) => {
    const steps = shotRecursion(cellOf(stations, { dispatch }), durations, 50);
    const served = shotsOf(steps).map((shot) => `${shot.station}${shot.start}`);
    expect(served.join(" ")).toBe(expected[dispatch]); // calculated by hand [C]
  });
});

describe("events at one instant", () => {
  const common = { recharge: 2, "shift to port": 1, "shift to neutral": 1, drop: 1, close: 1 };

  test.each(["machine", "operator"] as const)(
    "a removal by %s of zero duration that ends with the recharge makes its station ready",
    (removal) => {
      const names = ["early", "late"];
      const stations = [station("early", { priority: 2 }), station("late", { removal })];
      const durations = fixedTimes({ ...common, open: { early: 1, late: 7 }, remove: 0 }, names);
      const steps = shotRecursion(cellOf(stations, { dispatch: "priority" }), durations, 25);
      // Station late is ready at 10, the tick at which the screw is full for the third time; calculated by hand [C].
      expect(shotsOf(steps).map((shot) => `${shot.station}${shot.start}`)).toEqual([
        "late0",
        "early5",
        "late10",
        "early15",
        "late20",
      ]);
    },
  );

  test("of two requests at one tick the operator serves the station that is first in order", () => {
    const names = ["second", "first"];
    const stations = [
      station("second", { priority: 2, removal: "operator" }),
      station("first", { removal: "operator" }),
    ];
    const durations = fixedTimes({ ...common, open: { second: 5, first: 10 }, remove: 4 }, names);
    const steps = shotRecursion(cellOf(stations, { dispatch: "priority" }), durations, 20);
    // Both are open at 13; calculated by hand [C].
    const removals = steps.filter((step) => step.step === "remove");
    expect(removals.map((step) => `${step.station} ${step.start}-${step.end}`)).toEqual([
      "second 13-17",
      "first 17-21",
    ]);
  });

  test("an older request is served before one of a station earlier in order", () => {
    const names = ["second", "first"];
    const stations = [
      station("second", { priority: 2, removal: "operator" }),
      station("first", { removal: "operator" }),
    ];
    const durations = fixedTimes({ ...common, open: { second: 6, first: 10 }, remove: 4 }, names);
    const steps = shotRecursion(cellOf(stations, { dispatch: "priority" }), durations, 20);
    const removals = steps.filter((step) => step.step === "remove");
    expect(removals.map((step) => `${step.station} ${step.start}-${step.end}`)).toEqual([
      "first 13-17",
      "second 17-21",
    ]); // calculated by hand [C]
  });

  test("a cell that needs an operator and has none stops after its first shot", () => {
    const steps = shotRecursion(cellOf([station("only", { removal: "operator" })], { operators: 0 }), () => 1, 1000);
    expect(shotsOf(steps)).toHaveLength(1);
    expect(steps.some((step) => step.step === "remove")).toBe(false);
  });

  test("a circuit of no duration throws instead of looping for ever", () => {
    expect(() => shotRecursion(cellOf([station("only")]), () => 0, 10)).toThrow("time does not advance at 0");
  });

  test("mold steps, extra steps and machine removal follow one another without a gap", () => {
    const moldSteps = ["calibrate", "close", "pin down", "blow", "open"];
    const steps = shotRecursion(
      cellOf([station("only", { moldSteps })], { rechargeStarts: "mold-closed" }),
      () => 2,
      3,
    );
    const until = shotRecursion(
      cellOf([station("only", { moldSteps })], { rechargeStarts: "mold-closed" }),
      () => 2,
      16,
    );
    expect(steps.map((step) => step.step)).toEqual(["shift to port", "drop"]);
    // Port 0-2, drop 2-4, then five mold steps and the removal. The screw waits for close, 8, not for pin down, 10 [C].
    expect(until.map((step) => `${step.start} ${step.step}`)).toEqual([
      "0 shift to port",
      "2 drop",
      "4 calibrate",
      "4 shift to neutral",
      "6 close",
      "8 pin down",
      "8 recharge",
      "10 blow",
      "12 open",
      "14 remove",
    ]);
  });
});

describe("the cell as a timed event graph", () => {
  // Periods computed independently of this project [C]. Ticks are milliseconds: recharge 4.0 s, drop 1.8 s, close 0.6 s, mold time
  // after the drop 11.0 s, close included.
  const table = [
    { rechargeStarts: "valve-neutral", valve: 250, periods: [13_050, 6_525, 6_300, 6_300] },
    { rechargeStarts: "mold-closed", valve: 250, periods: [13_050, 6_650, 6_650, 6_650] },
    { rechargeStarts: "valve-neutral", valve: 500, periods: [13_300, 6_800, 6_800, 6_800] },
  ] as const;
  const rows = table.flatMap((row) => row.periods.map((period, k) => ({ ...row, period, stations: k + 1 })));

  test.each(rows)("$rechargeStarts, valve $valve ms, $stations stations: $period ms a shot", (row) => {
    const names = Array.from({ length: row.stations }, (_, k) => `station ${k + 1}`);
    const times = {
      recharge: 4000,
      "shift to port": row.valve,
      "shift to neutral": row.valve,
      drop: 1800,
      close: 600,
      open: 9400,
      remove: 1000,
    };
    const cell = cellOf(
      names.map((name) => station(name)),
      { rechargeStarts: row.rechargeStarts },
    );
    const steps = shotRecursion(cell, fixedTimes(times, names), 40 * row.period);
    expect(ticksBetween(steps, 3 * row.stations, 4 * row.stations)).toBe(4 * row.stations * row.period);
  });
});

const stepTimes = {
  recharge: fc.integer({ min: 0, max: 12 }),
  drop: fc.integer({ min: 1, max: 6 }),
  close: fc.integer({ min: 0, max: 8 }),
  open: fc.integer({ min: 0, max: 80 }),
  remove: fc.integer({ min: 0, max: 20 }),
};
const layout = {
  valve: fc.integer({ min: 0, max: 3 }),
  dispatch: fc.constantFrom(...dispatches),
  rechargeStarts: fc.constantFrom(...recharges),
  start: fc.constantFrom("running" as const, "cold" as const),
};

type StepTimes = { readonly [Step in keyof typeof stepTimes]: number };

/** Circuit of the screw in the timed event graph, derived by hand [C]: v + d + (v or max(v, c)) + r. */
function screwCircuit(rechargeStarts: RecursionCell["rechargeStarts"], valve: number, t: StepTimes): number {
  return valve + t.drop + (rechargeStarts === "mold-closed" ? Math.max(valve, t.close) : valve) + t.recharge;
}

/** Circuit of a station in the timed event graph, derived by hand [C]: v + d + m. */
function stationCircuit(valve: number, t: StepTimes): number {
  return valve + t.drop + t.close + t.open + t.remove;
}

describe("the closed form of the ideal cycle", () => {
  test("equal stations with fixed times have the period of the critical circuit, under every rule", () => {
    const longest = { screw: 0, molds: 0, crew: 0 };
    const count = fc.integer({ min: 1, max: 16 });
    const crew = fc.integer({ min: 0, max: 3 }); // 0 stands for removal by machine
    fc.assert(
      fc.property(
        fc.record(stepTimes),
        fc.record(layout),
        count,
        crew,
        (t, { valve, ...rules }, stations, operators) => {
          const names = Array.from({ length: stations }, (_, k) => `station ${k + 1}`);
          const removal = operators === 0 ? "machine" : "operator";
          const cell = cellOf(
            names.map((name, k) => station(name, { removal, priority: k })),
            { ...rules, operators },
          );
          // The span of shots is a multiple of every circuit's shots, so that ticks stay whole.
          const span = stations * Math.max(operators, 1);
          const screw = span * screwCircuit(rules.rechargeStarts, valve, t);
          const molds = (span / stations) * stationCircuit(valve, t);
          const crewTicks = operators === 0 ? 0 : (span / Math.min(operators, stations)) * t.remove;
          const period = Math.max(screw, molds, crewTicks);
          longest[period === screw ? "screw" : period === molds ? "molds" : "crew"] += 1;
          // A crew a little slower than the screw uses up the slack of the molds by 1/operators of a tick a shot before it binds.
          const transient = stations * (4 + operators * Math.ceil(screw / span));
          const shots = transient + 2 * span + 2;
          const until = Math.ceil((shots * period) / span) + screw + molds + crewTicks + t.recharge;
          const steps = shotRecursion(
            cell,
            fixedTimes({ ...t, "shift to port": valve, "shift to neutral": valve }, names),
            until,
          );
          expect(ticksBetween(steps, transient, span)).toBe(period);
          expect(ticksBetween(steps, transient + 1, 2 * span)).toBe(2 * period);
        },
      ),
      { numRuns: Math.max(caseCount, 200) },
    );
    for (const [circuit, cases] of Object.entries(longest))
      expect(cases, `cases with the ${circuit} as critical circuit`).toBeGreaterThan(0);
  });

  test("different stations in rotation take the longer of the screw's turn and the slowest station for M shots", () => {
    const stationsTimes = fc.array(fc.record(stepTimes), { minLength: 1, maxLength: 16 });
    fc.assert(
      fc.property(stationsTimes, fc.record(layout), (each, { valve, ...rules }) => {
        const cell = cellOf(
          each.map((_, k) => station(`station ${k + 1}`)),
          { ...rules, dispatch: "alternate" },
        );
        const coldRecharge = 7;
        const durations: Durations = (resource, step, _n, index) => {
          const own: Readonly<Record<string, number>> = each[index] ?? { recharge: coldRecharge };
          return resource === "valve" ? valve : (own[step] ?? Number.NaN);
        };
        const turn = each.reduce((sum, t) => sum + screwCircuit(rules.rechargeStarts, valve, t), 0);
        const slowest = Math.max(...each.map((t) => stationCircuit(valve, t)));
        const period = Math.max(turn, slowest);
        // The transient takes at most 2 × period turns: a slow station uses up the lead of the others by a tick a turn or more.
        const turns = turn >= slowest ? 1 : 2 * period;
        const steps = shotRecursion(cell, durations, (turns + 8) * period + coldRecharge);
        expect(ticksBetween(steps, turns * each.length, 4 * each.length)).toBe(4 * period);
      }),
    );
  });
});
