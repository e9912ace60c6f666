// The log of stops, one record for each stop, against ticks calculated by hand [C].
import { describe, expect, it } from "vitest";
import type { ProcessSpec, StepTable } from "#engine/compiler/stepTable.ts";
import { runTable, ticks } from "../../support/runTable.ts";

/** A stop `until` ticks after the end of the previous one; its repair begins after a wait. */
function stopping(
  stop: number,
  resource: string,
  [until, wait, repair]: readonly [number, number, number],
): ProcessSpec {
  return {
    name: `stop ${stop}`,
    resource,
    steps: [
      { name: "wear", time: ticks(until), isClock: true },
      { name: "break", stops: { resource, rule: "hold" }, stopMarks: [{ stop, phase: "begin" }] },
      { name: "wait", time: ticks(wait), stopMarks: [{ stop, phase: "repair" }] },
      { name: "mend", time: ticks(repair), releases: resource, stopMarks: [{ stop, phase: "end" }] },
    ],
  };
}

const machines = ["a", "b"];
const table: StepTable = {
  resources: machines.map((name) => ({
    name,
    states: [
      { name: "at work", kind: "working" },
      { name: "broken", kind: "stopped" },
    ],
    whenStopped: "broken",
  })),
  places: [],
  processes: [
    ...machines.map((name) => ({
      name,
      resource: name,
      steps: [{ name: "work", shows: [{ resource: name, state: "at work" }], time: ticks(4) }],
    })),
    // Begin at 5, 17, 29 …, repair 3 ticks and end 7 ticks later.
    stopping(0, "a", [5, 3, 4]),
    // Begin at 6, 16, 26 …, repair at once and end 4 ticks later.
    stopping(1, "b", [6, 0, 4]),
  ],
};

const record = (stop: number, begin: number, repair: number | null, end: number | null) => ({
  stop,
  begin,
  repair,
  end,
});

describe("the log of stops", () => {
  it("contains each stop with its repair and its end, in the order of their starts", () => {
    expect(runTable(table, 18).simulation.stops.records).toEqual([
      record(0, 5, 8, 12),
      record(1, 6, 6, 10),
      record(1, 16, 16, null),
      record(0, 17, null, null),
    ]);
  });

  it("leaves out a stop that began before the observation", () => {
    const { simulation } = runTable(table, 7);
    simulation.restartObservation();
    simulation.runUntil(21);
    expect(simulation.stops.records).toEqual([record(1, 16, 16, 20), record(0, 17, 20, null)]);
  });

  it("is not changed after the run's end, when the run goes on to find what binds a wait", () => {
    const late = { name: "late", resource: "a", steps: [{ name: "await", needs: [{ place: "work done" }] }] };
    const gives = [{ place: "work done" }];
    const [work, ...others] = table.processes;
    const given = { ...work!, steps: [{ ...work!.steps[0]!, time: ticks(30), gives }] };
    const waiting = { ...table, places: [{ name: "work done", tokens: 0 }], processes: [given, ...others, late] };
    const { simulation } = runTable(waiting, 18);
    const before = simulation.stops.records.map((each) => ({ ...each }));
    simulation.chainsOf([waiting.processes.indexOf(late)]);
    expect(simulation.now).toBeGreaterThan(18);
    expect(simulation.stops.records).toEqual(before);
  });
});
