// What timetables do to the chain, and what a scale decides.
import { describe, expect, it } from "vitest";
import type { StepTable } from "#engine/compiler/stepTable.ts";
import { runTable, ticks } from "../../support/runTable.ts";

/** A machine of 4 ticks a turn; a timetable takes it away at tick 10, or when its turn is over, for 5 ticks. */
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
  it("takes what it wants when the turn under way is over", () => {
    const run = runTable(timetable(true), 25);
    expect(run.statesOf("machine")).toEqual(["0 working", "12 off", "17 working"]);
  });

  it("never binds what follows: the chain goes on to the turn that it interrupted", () => {
    expect(runTable(timetable(true), 25).chainOf("machine")).toEqual({ "machine: off": 5, "machine: work": 20 });
  });

  it("binds where it is no clock and ends last, which is what a clock is there to avoid", () => {
    const late = { ...timetable(false) };
    const [first, machine] = late.processes;
    const idle = { ...machine!, steps: [{ name: "sleep", time: ticks(30) }, ...machine!.steps] };
    const table = { ...late, processes: [first!, idle] };
    const chain = runTable(table, 14).simulation.chainsOf([0])[0]!;
    expect(Array.from(chain.ticks)).toContain(10);
  });
});

/** Weighs a part every tick: a shot of 1 ± nothing, kept, then a part of the values in turn. */
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
          { name: "keep", scale: { law: { kind: "fixed", value: 1 }, stream: "shot", keeps: true } },
          {
            name: "weigh",
            scale: {
              law: { kind: "empirical", values },
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
  it("judges what it draws together with what the process keeps; a number on a limit is within it", () => {
    const run = runTable(scales([0.9, 1, 1.1, 1.2], 2, 2.1), 4000);
    const shares = ["light", "good", "heavy"].map((counter) => run.count(counter) / 4000);
    expect(shares[0]).toBeCloseTo(0.25, 1);
    expect(shares[1]).toBeCloseTo(0.5, 1);
    expect(shares[2]).toBeCloseTo(0.25, 1);
    expect(run.count("light") + run.count("good") + run.count("heavy")).toBe(4000);
  });

  it("lets all pass whose limits hold every value, and none where they hold none", () => {
    expect(runTable(scales([0.9, 1.2], 1.9, 2.2), 500).count("good")).toBe(500);
    expect(runTable(scales([0.9, 1.2], 2, 2.1), 500).count("good")).toBe(0);
  });
});
