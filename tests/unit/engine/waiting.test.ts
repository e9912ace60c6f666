// Waits in the interpreter of step tables: several tokens at once, patience, and clocks on working time.
import { describe, expect, it } from "vitest";
import type { ProcessSpec, ResourceSpec, StepTable } from "#engine/compiler/stepTable.ts";
import { runTable, ticks } from "../../support/runTable.ts";

const resource = (name: string): ResourceSpec => ({
  name,
  states: [
    { name: "waiting", kind: "waiting" },
    { name: "working", kind: "working" },
  ],
});

/** Brings a part every `every` ticks. */
const supplier = (every: number): ProcessSpec => ({
  name: "supplier",
  resource: "supplier",
  steps: [{ name: "bring", time: ticks(every), gives: [{ place: "parts" }] }],
});

const tableOf = (...processes: readonly ProcessSpec[]): StepTable => ({
  resources: [resource("a"), resource("supplier")],
  places: [{ name: "parts", tokens: 0 }],
  processes,
});

// Timelines calculated by hand [C].
describe("a wait", () => {
  it("ends when the place has as many tokens as the step needs, and takes them", () => {
    const pack: ProcessSpec = {
      name: "a",
      resource: "a",
      steps: [
        {
          name: "pack",
          needs: [{ place: "parts", count: 3, meanwhile: "waiting" }],
          shows: [{ resource: "a", state: "working" }],
          time: ticks(1),
          counts: { packs: 1 },
        },
      ],
    };
    // Parts come at 2, 4, 6, …: there are three at 6, 12 and 18.
    expect(runTable(tableOf(pack, supplier(2)), 20).ticksOf("packs")).toEqual([7, 13, 19]);
  });

  it.each([40, 1e9])("may last in a growing line while the chain is folded every %i nodes", (foldAt) => {
    const slow: ProcessSpec = {
      name: "a",
      resource: "a",
      steps: [{ name: "pack", needs: [{ place: "parts" }], time: ticks(10), counts: { packs: 1 } }],
    };
    const run = runTable(tableOf(slow, supplier(1)), 30_000, { foldAt });
    // The first part comes at 1; from then on one part is packed every 10 ticks. Every waiting part keeps its node.
    expect(run.count("packs")).toBe(2_999);
    expect(run.chainOf("a")).toEqual({ "a: pack": 29_999, "supplier: bring": 1 });
  });

  it("that patience has ended is not served later", () => {
    const impatient: ProcessSpec = {
      name: "a",
      resource: "a",
      steps: [
        {
          name: "work",
          needs: [{ place: "parts", meanwhile: "waiting" }],
          patience: { time: ticks(5), leaveFor: "give up" },
          time: ticks(1),
          next: "work",
          counts: { served: 1 },
        },
        { name: "give up", time: ticks(6), counts: { lost: 1 } },
      ],
    };
    // The process gives up at 5 and is back at 11, where it takes the part of 8. It waits again from 12 for the part of 16.
    const run = runTable(tableOf(impatient, supplier(8)), 18);
    expect(run.ticksOf("lost")).toEqual([11]);
    expect(run.ticksOf("served")).toEqual([12, 17]);
  });

  it("does not advance a clock on working time that begins during it", () => {
    const worker: ProcessSpec = {
      name: "a",
      resource: "a",
      steps: [
        {
          name: "work",
          needs: [{ place: "parts", meanwhile: "waiting" }],
          shows: [{ resource: "a", state: "working" }],
          time: ticks(3),
        },
      ],
    };
    const clock: ProcessSpec = {
      name: "clock",
      resource: "a",
      steps: [{ name: "wear", time: ticks(2, { whileWorking: "a" }), counts: { worn: 1 } }],
    };
    // Work 4-7, 8-11, 12-15: two ticks of work are done at 6, at 9 (6-7, 8-9) and at 11.
    expect(runTable(tableOf(worker, clock, supplier(4)), 11).ticksOf("worn")).toEqual([6, 9, 11]);
  });
});
