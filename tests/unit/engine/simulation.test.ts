// The interpreter of step tables: order of service, patience, overlapping stops, standstill and readers of counters.
import { describe, expect, it } from "vitest";
import type { ProcessSpec, ResourceSpec, ServingRule, StepSpec, StepTable } from "#engine/compiler/stepTable.ts";
import { runTable, ticks } from "../../support/runTable.ts";

const resource = (name: string): ResourceSpec => ({
  name,
  states: [
    { name: "waiting", kind: "waiting" },
    { name: "working", kind: "working" },
    { name: "stopped", kind: "stopped" },
  ],
  whenStopped: "stopped",
});

function work(name: string, more: Partial<StepSpec> & { readonly takes: number; readonly place?: string }): StepSpec {
  const { takes, place = "turn", ...step } = more;
  return {
    name: "work",
    needs: [{ place, meanwhile: "waiting" }],
    shows: [{ resource: name, state: "working" }],
    time: ticks(takes),
    gives: [{ place }],
    ...step,
  };
}

const process = (name: string, steps: readonly StepSpec[], more: Partial<ProcessSpec> = {}): ProcessSpec => ({
  name,
  resource: name,
  steps,
  ...more,
});

/** Stops the resource once, from `from` on, for `lasts` ticks. */
function stopper(
  name: string,
  stops: string,
  from: number,
  lasts: number,
  rule: "finish" | "hold" | "scrap",
): ProcessSpec {
  return process(
    name,
    [
      { name: "until then", time: ticks(from) },
      { name: "stop", stops: { resource: stops, rule } },
      { name: "repair", time: ticks(lasts), releases: stops },
      { name: "never again", needs: [{ place: "never" }] },
    ],
    { resource: stops },
  );
}

/** Processes a, b and c share one token; each works for a tick and then pauses for its time. */
function sharedTurn(rule: ServingRule, pause: readonly number[], more: readonly ProcessSpec[] = []): StepTable {
  const names = ["a", "b", "c"].slice(0, pause.length);
  return {
    resources: names.map(resource),
    places: [
      { name: "turn", tokens: 1, rule },
      { name: "never", tokens: 0 },
    ],
    processes: [
      ...names.map((name, k) =>
        process(
          name,
          [
            work(name, { takes: 1 }),
            { name: "pause", shows: [{ resource: name, state: "waiting" }], time: ticks(pause[k]!) },
          ],
          {
            priority: [2, 3, 1][k]!,
          },
        ),
      ),
      ...more,
    ],
  };
}

function order(table: StepTable, until: number): string {
  const run = runTable(table, until);
  const starts = table.resources.flatMap(({ name }) =>
    run
      .statesOf(name)
      .flatMap((line) => (line.endsWith(" working") ? [[Number(line.split(" ")[0]), name] as const] : [])),
  );
  return starts
    .toSorted((one, other) => one[0] - other[0])
    .map(([tick, name]) => `${name}${tick}`)
    .join(" ");
}

describe("a place serves", () => {
  // Timelines calculated by hand [C]: each process holds the token for a tick, and all request it at 0.
  it("first come, first served, and of simultaneous requests the process listed first", () => {
    expect(order(sharedTurn("first-come", [4, 2, 2]), 10)).toBe("a0 b1 c2 b4 a5 c6 b7 c9 a10");
  });

  it("by priority, the lowest number first", () => {
    expect(order(sharedTurn("priority", [2, 2, 2]), 8)).toBe("c0 a1 b2 c3 a4 b5 c6 a7 b8");
    expect(order(sharedTurn("priority", [1, 1, 1]), 8)).toBe("c0 a1 c2 a3 c4 a5 c6 a7 c8");
  });

  it("the process that it served longest ago", () => {
    expect(order(sharedTurn("longest-since-served", [1, 1, 1]), 7)).toBe("a0 b1 c2 a3 b4 c5 a6 b7");
  });

  it("in rotation, and waits for a process that is late", () => {
    expect(order(sharedTurn("rotation", [1, 8, 1]), 13)).toBe("a0 b1 c2 a3 b10 c11 a12");
  });

  it("in rotation, and skips a process from the instant at which it is stopped", () => {
    // After a 3-4 it is the turn of b, which pauses until 10. b is stopped from 7 to 30, so c, ready since 4, is served at 7.
    expect(order(sharedTurn("rotation", [1, 8, 1], [stopper("stop", "b", 7, 23, "hold")]), 13)).toBe(
      "a0 b1 c2 a3 c7 a8 c9 a10 c11 a12 c13",
    );
  });
});

describe("patience", () => {
  const table: StepTable = {
    resources: [resource("a")],
    places: [{ name: "late", tokens: 0 }],
    processes: [
      process("a", [
        { name: "prepare", shows: [{ resource: "a", state: "working" }], time: ticks(2) },
        {
          ...work("a", { takes: 1, place: "late" }),
          patience: { time: ticks(5), leaveFor: "give up" },
          next: "prepare",
        },
        { name: "give up", shows: [{ resource: "a", state: "working" }], time: ticks(3), counts: { lost: 1 } },
      ]),
    ],
  };

  it("ends a wait that lasts too long, and is a segment of the critical path", () => {
    const run = runTable(table, 9);
    expect(run.statesOf("a")).toEqual(["0 working", "2 waiting", "7 working"]);
    expect(run.chainOf("a")).toEqual({ "a: prepare": 2, "a: work patience": 5, "a: give up": 2 });
  });

  it("has no effect after the end of the wait", () => {
    const supplier = process("b", [
      { name: "bring", time: ticks(4), gives: [{ place: "late" }] },
      { name: "rest", time: ticks(90) },
    ]);
    const withSupply = {
      ...table,
      resources: [...table.resources, resource("b")],
      processes: [...table.processes, supplier],
    };
    expect(runTable(withSupply, 8).count("lost")).toBe(0);
    expect(runTable(withSupply, 8).statesOf("a")).toEqual(["0 working", "2 waiting", "4 working"]);
  });
});

describe("overlapping stops", () => {
  function stoppedTwice(
    first: readonly [number, number],
    second: readonly [number, number],
    rule: "hold" | "scrap",
  ): readonly string[] {
    const table: StepTable = {
      resources: [resource("a")],
      places: [{ name: "never", tokens: 0 }],
      processes: [
        process("a", [
          {
            name: "work",
            shows: [{ resource: "a", state: "working" }],
            time: ticks(10),
            stopped: { hold: "hold", scrap: { leaveFor: "clear" } },
            counts: { made: 1 },
          },
          { name: "rest", needs: [{ place: "never", meanwhile: "waiting" }] },
          {
            name: "clear",
            shows: [{ resource: "a", state: "waiting" }],
            time: ticks(4),
            counts: { cleared: 1 },
            next: "rest",
          },
        ]),
        stopper("first", "a", ...first, "hold"),
        stopper("second", "a", ...second, rule),
      ],
    };
    const run = runTable(table, 60);
    return [...run.statesOf("a"), `made ${run.count("made")}, cleared ${run.count("cleared")}`];
  }

  it("hold the step until the last of them ends", () => {
    expect(stoppedTwice([3, 6], [5, 20], "hold")).toEqual([
      "0 working",
      "3 stopped",
      "25 working",
      "32 waiting",
      "made 1, cleared 0",
    ]);
    expect(stoppedTwice([3, 6], [15, 2], "hold")).toEqual([
      "0 working",
      "3 stopped",
      "9 working",
      "15 stopped",
      "17 working",
      "18 waiting",
      "made 1, cleared 0",
    ]);
  });

  it("scrap even a step that is already held", () => {
    expect(stoppedTwice([3, 6], [5, 20], "scrap")).toEqual([
      "0 working",
      "3 stopped",
      "25 waiting",
      "made 0, cleared 1",
    ]);
  });
});

describe("a standstill", () => {
  it("gives the circle of a deadlock, and counts the time until the end as waiting", () => {
    const taker = (name: string, first: string, second: string): ProcessSpec =>
      process(name, [
        { ...work(name, { takes: 1, place: first }), name: `take ${first}`, gives: [] },
        {
          ...work(name, { takes: 1, place: second }),
          name: `take ${second}`,
          gives: [{ place: first }, { place: second }],
        },
      ]);
    const table: StepTable = {
      resources: [resource("a"), resource("b")],
      places: [
        { name: "left", tokens: 1 },
        { name: "right", tokens: 1 },
      ],
      processes: [taker("a", "left", "right"), taker("b", "right", "left")],
    };
    const run = runTable(table, 10);
    expect(run.simulation.standstill).toEqual({
      kind: "deadlock",
      tick: 1,
      waiting: [
        { process: "a", step: "take right", lacks: "right" },
        { process: "b", step: "take left", lacks: "left" },
      ],
    });
    expect(Array.from(run.simulation.stateTicks)).toEqual([9, 1, 0, 9, 1, 0]);
  });

  it("names the place that lacks a token, not one that has enough", () => {
    const step: StepSpec = { name: "take both", needs: [{ place: "full" }, { place: "empty" }] };
    const table: StepTable = {
      resources: [resource("a")],
      places: [
        { name: "full", tokens: 1 },
        { name: "empty", tokens: 0 },
      ],
      processes: [process("a", [step])],
    };
    expect(runTable(table, 10).simulation.standstill?.waiting).toEqual([
      { process: "a", step: "take both", lacks: "empty" },
    ]);
  });

  it("gives the stop that never ends", () => {
    const table: StepTable = {
      resources: [resource("a")],
      places: [{ name: "never", tokens: 0 }],
      processes: [
        process("a", [{ name: "work", shows: [{ resource: "a", state: "working" }], time: ticks(4) }]),
        process(
          "stop",
          [
            { name: "until then", time: ticks(6) },
            { name: "stop", stops: { resource: "a", rule: "finish" } },
            { name: "repair", needs: [{ place: "never" }] },
          ],
          { resource: "a" },
        ),
      ],
    };
    const run = runTable(table, 20);
    expect(run.statesOf("a")).toEqual(["0 working", "8 stopped"]);
    expect(run.simulation.standstill?.waiting).toEqual([
      { process: "a", step: "work", lacks: "a" },
      { process: "stop", step: "repair", lacks: "never" },
    ]);
  });

  it("does not occur in steps without time, needs or effects", () => {
    const steps = [
      { name: "begin", time: ticks(3), counts: { begun: 1 } },
      { name: "nothing" },
      { name: "nothing more" },
      { name: "end", time: ticks(2), counts: { ended: 1 } },
      { name: "no more" },
      { name: "and back" },
    ];
    const run = runTable({ resources: [resource("a")], places: [], processes: [process("a", steps)] }, 14);
    expect(run.simulation.standstill).toBeUndefined();
    expect(run.ticksOf("begun")).toEqual([3, 8, 13]);
    expect(run.ticksOf("ended")).toEqual([5, 10]);
  });

  it.each([
    ["of steps without a time", {}],
    ["of times of zero", { time: ticks(0) }],
  ])("gives a loop %s", (_, time) => {
    const table: StepTable = {
      resources: [resource("a")],
      places: [],
      processes: [
        process("a", [
          { name: "begin", time: ticks(3) },
          { name: "turn", next: "turn", ...time },
        ]),
      ],
    };
    const run = runTable(table, 10);
    expect(run.simulation.standstill).toEqual({
      kind: "zero-time loop",
      tick: 3,
      waiting: [{ process: "a", step: "turn", lacks: "" }],
    });
    run.simulation.runUntil(20);
    expect(run.simulation.now).toBe(20);
  });
});

describe("a reader of a counter", () => {
  /** a and b take turns of 10 ticks each; one counter counts the parts of both. */
  const turns: StepTable = {
    resources: ["a", "b"].map(resource),
    places: [{ name: "turn", tokens: 1 }],
    processes: ["a", "b"].map((name) =>
      process(name, [work(name, { takes: 10, counts: { made: 1, [`made by ${name}`]: 1 } })]),
    ),
  };
  const calls: string[] = [];
  const reader = (name: string) => (tick: number) => void calls.push(`${tick} ${name}`);
  const readers = [
    ["made", reader("first")],
    ["made by b", reader("b")],
    ["made", reader("second")],
  ] as const;
  const { simulation, ticksOf } = runTable(turns, 25, { readers });

  it("is called at each rise during the run, in the order of the readers; counters without a reader stay in the marks", () => {
    expect(calls).toEqual(["10 first", "10 second", "20 first", "20 second", "20 b"]);
    expect(ticksOf("made by a")).toEqual([10]);
    expect(ticksOf("made")).toEqual([]);
  });

  it("is not called after the run's end, when the run goes on to find what binds a wait", () => {
    calls.length = 0;
    simulation.chainsOf([1]);
    expect(simulation.now).toBeGreaterThan(25);
    expect(calls).toEqual([]);
    expect(ticksOf("made")).toEqual([30]);
  });
});
