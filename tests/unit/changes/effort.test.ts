// How many replications the changed cells may take, by hand from the means of one core.
import { describe, expect, it } from "vitest";
import { allowance } from "#analysis/changes/effort.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { always, server } from "../../support/takeawayCell.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { baseMade } from "../../support/madeAnswers.ts";

/** Two hours, of which the first 600 s do not count. */
const scenario: Scenario = { ...oneStation, run: { ...oneStation.run, length: 7200, warmup: 600, replications: 3 } };
const baseOf = (replications: number, shots: number, more: Partial<Scenario> = {}, parts = 0) =>
  baseMade(
    { ...scenario, ...more },
    {
      "shots per hour": Array.from({ length: replications }, () => shots),
      "parts per hour": Array.from({ length: replications }, () => parts),
    },
  );
const run = (replications: number) => ({ ...scenario.run, replications });

describe("the replications of all changed cells", () => {
  it("fill up what a short call leaves", () => {
    // By hand: a replication takes 0.5 ms and 1,000 shots of 0.8 µs, 1.3 ms in all; (1.3 s − 1.6 × 10 × 1.3 ms) / 1.3 ms.
    expect(allowance(baseOf(10, 500), "few")).toEqual({ run: run(10), isShort: false, replications: 984 });
    // Two servers for 2,000 parts, 0.2 µs each: 2.1 ms in all; 1.3 s / 2.1 ms − 16.
    const belts = { takeaway: [server("a", always(1)), server("b", always(1))] };
    expect(allowance(baseOf(10, 500, belts, 1000), "few").replications).toBe(603);
  });

  it("are 1.2 times those of a long run", () => {
    // By hand: 1,000 replications of 1.3 ms take 1.3 s.
    expect(allowance(baseOf(1000, 500), "few").replications).toBe(1200);
  });

  it("are without limit where all is asked for", () => {
    expect(allowance(baseOf(10, 500), "full")).toEqual({ run: run(10), isShort: false, replications: Infinity });
  });

  it("become shorter where there is room for fewer than 24", () => {
    // By hand: a million shots an hour take 1.6005 s; 1.2 × 10 replications are 12 of the 56 for 14 changes of four.
    const { run: short, isShort, replications } = allowance(baseOf(10, 1e6), "few");
    expect(isShort).toBe(true);
    expect(short.length).toBe(600 + Math.floor((6600 * 12) / 56));
    expect(short.replications).toBe(4);
    expect(replications).toBe(Math.floor((12 * 7200) / 2014));
    // 20 replications leave room for 24.
    expect(allowance(baseOf(20, 1e6), "few")).toEqual({ run: run(20), isShort: false, replications: 24 });
    expect(allowance(baseOf(19, 1e6), "few").isShort).toBe(true);
  });

  it("stay as long with a calendar", () => {
    const calendar = { begins: "", clockChanges: [], off: [], operators: [], shifts: [], breaks: "stop" } as const;
    expect(allowance(baseOf(10, 1e6, { calendar }), "few")).toEqual({ run: run(10), isShort: false, replications: 12 });
  });
});
