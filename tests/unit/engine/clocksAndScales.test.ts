// The effect of timetables on the critical path, and the decisions of a scale.
import { describe, expect, it } from "vitest";
import type { StepTable } from "#engine/compiler/stepTable.ts";
import { runTable, ticks } from "../../support/runTable.ts";

/** A machine of 4 ticks a turn; at tick 10 or after its turn a timetable takes it for 5 ticks. */
function timetable(isClock: boolean): StepTable {
  return {
    resources: [
      {
        name: "machine",
        states: [
          { name: "ready", kind: "waiting" },
          { name: "working", kind: "working" },
          { name: "off", kind: "off" },
        ],
      },
    ],
    places: [
      { name: "machine", tokens: 1, rule: "priority" },
      { name: "never", tokens: 0 },
    ],
    processes: [
      {
        name: "timetable",
        resource: "machine",
        priority: 0,
        steps: [
          { name: "until the end", time: ticks(10), ...(isClock ? { isClock } : {}) },
          {
            name: "off",
            needs: [{ place: "machine" }],
            shows: [{ resource: "machine", state: "off" }],
            time: ticks(5),
            gives: [{ place: "machine" }],
          },
          { name: "no other", needs: [{ place: "never" }] },
        ],
      },
      {
        name: "machine",
        resource: "machine",
        priority: 1,
        steps: [
          {
            name: "work",
            needs: [{ place: "machine" }],
            shows: [{ resource: "machine", state: "working" }],
            time: ticks(4),
            gives: [{ place: "machine" }],
          },
        ],
      },
    ],
  };
}

describe("a timetable", () => {
  it("takes the machine after the turn under way", () => {
    const run = runTable(timetable(true), 25);
    expect(run.statesOf("machine")).toEqual(["0 working", "12 off", "17 working"]);
  });

  it("never binds: the critical path continues with the turn before it", () => {
    expect(runTable(timetable(true), 25).chainOf("machine")).toEqual({ "machine: off": 5, "machine: work": 20 });
  });

  it("binds when it is not marked as a clock and ends last", () => {
    const unmarked = timetable(false);
    const [first, machine] = unmarked.processes;
    const idle = { ...machine!, steps: [{ name: "idle", time: ticks(30) }, ...machine!.steps] };
    const table = { ...unmarked, processes: [first!, idle] };
    const chain = runTable(table, 14).simulation.chainsOf([0])[0]!;
    expect(Array.from(chain.ticks)).toContain(10);
  });
});

const stay = { name: "stay", needs: [{ place: "never" }] };

/** Absences of two kinds; the second one begins late. */
function machineByTimetable(): StepTable {
  const lasting = ticks(0, { until: "timetable" });
  const shows = (state: string) => ({ shows: [{ resource: "machine", state }] });
  const at = (tick: number, leadsTo?: number) => ({
    until: tick * 1e-6,
    ...(leadsTo === undefined ? {} : { leadsTo }),
  });
  return {
    resources: [
      {
        name: "machine",
        states: [
          { name: "working", kind: "working" },
          { name: "off", kind: "off" },
          { name: "at night", kind: "off" },
        ],
      },
    ],
    places: [{ name: "never", tokens: 0 }],
    processes: [
      // Its timetable is the first of the table: that of the machine begins behind it.
      {
        name: "other",
        resource: "machine",
        timetable: [at(3)],
        steps: [{ name: "wait", time: lasting, counts: { other: 1 } }, stay],
      },
      {
        name: "machine",
        resource: "machine",
        timetable: [at(10, 1), at(15), at(14, 3), at(20), at(30, 1), at(31), at(0, 4)],
        steps: [
          { name: "work", ...shows("working"), time: lasting, isClock: true, turns: true },
          { name: "shift ends" },
          { name: "leave", ...shows("off"), time: lasting, counts: { left: 1 }, next: "work" },
          { name: "leave at night", ...shows("at night"), time: lasting, next: "work" },
          stay,
        ],
      },
    ],
  };
}

describe("steps that last by a timetable", () => {
  it("lead where it says, and last to its next tick, or no time where that is over", () => {
    const { statesOf, ticksOf } = runTable(machineByTimetable(), 50);
    expect(statesOf("machine")).toEqual(["0 working", "10 off", "15 at night", "20 working", "30 off", "31 working"]);
    expect(ticksOf("left")).toEqual([15, 31]);
    expect(ticksOf("other")).toEqual([3]);
  });
});

/** Weighs a part every tick: a kept shot mass of 1 plus a mass drawn from the values. */
function scales(values: readonly number[], low: number, high: number): StepTable {
  return {
    resources: [{ name: "scale", states: [{ name: "weighing", kind: "working" }] }],
    places: [],
    processes: [
      {
        name: "scale",
        resource: "scale",
        steps: [
          { name: "fill", time: ticks(1) },
          { name: "keep", scale: { distribution: { kind: "fixed", value: 1 }, stream: "shot", keeps: true } },
          {
            name: "weigh",
            scale: {
              distribution: { kind: "empirical", values },
              stream: "part",
              below: { limit: low, next: "light" },
              above: { limit: high, next: "heavy" },
            },
          },
          { name: "good", counts: { good: 1 }, next: "fill" },
          { name: "light", counts: { light: 1 }, next: "fill" },
          { name: "heavy", counts: { heavy: 1 }, next: "fill" },
        ],
      },
    ],
  };
}

describe("a scale", () => {
  it("judges the sum of its draw and the kept number; a sum on a limit is within it", () => {
    const run = runTable(scales([0.9, 1, 1.1, 1.2], 2, 2.1), 4000);
    const shares = ["light", "good", "heavy"].map((counter) => run.count(counter) / 4000);
    expect(shares[0]).toBeCloseTo(0.25, 1);
    expect(shares[1]).toBeCloseTo(0.5, 1);
    expect(shares[2]).toBeCloseTo(0.25, 1);
    expect(run.count("light") + run.count("good") + run.count("heavy")).toBe(4000);
  });

  it("passes all parts when its limits contain every value, and none when they contain no value", () => {
    expect(runTable(scales([0.9, 1.2], 1.9, 2.2), 500).count("good")).toBe(500);
    expect(runTable(scales([0.9, 1.2], 2, 2.1), 500).count("good")).toBe(0);
  });
});
