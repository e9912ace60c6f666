// Holds the recursions of accumulator and continuous extrusion to timelines calculated by hand from the rules of the model [C].
import { describe, expect, test } from "vitest";
import { accumulatorRecursion, type AccumulatorCell } from "../../support/accumulatorRecursion.ts";
import { continuousRecursion } from "../../support/continuousRecursion.ts";
import { accumulatorOf, continuousOf, fixedTimes, type Ticks } from "../../support/equalStations.ts";
import type { Durations, StepInterval } from "../../support/shotRecursion.ts";

const written = (steps: readonly StepInterval[], resource: string): string =>
  steps
    .filter((each) => each.resource === resource)
    .map(({ step, station, start, end }) => `${step}${station === resource ? "" : ` ${station}`} ${start}-${end}`)
    .join(", ");

describe("the recursion gives the timeline calculated by hand", () => {
  test("chamber per station: the screw fills one head while the other station molds", () => {
    const ticks = { recharge: 4, "shift to port": 1, drop: 2, close: 1, cool: 3, remove: 1 };
    const steps = accumulatorRecursion(accumulatorOf(2, "running"), fixedTimes(ticks), 16);
    // Both full chambers drop at 0. The valve reaches a before its drop ends. The next shot waits for a's mold, but not for b's.
    expect(written(steps, "valve")).toBe("shift to port a 0-1, shift to port b 6-7, shift to port a 11-12");
    expect(written(steps, "plasticator")).toBe("recharge a 2-6, recharge b 7-11, recharge a 12-16");
    expect(written(steps, "a")).toBe(
      "drop 0-2, close 2-3, cool 3-6, remove 6-7, drop 7-9, close 9-10, cool 10-13, remove 13-14",
    );
    expect(written(steps, "b")).toBe("drop 0-2, close 2-3, cool 3-6, remove 6-7, drop 11-13, close 13-14, cool 14-17");
  });

  test("chamber per station, cold start: the heads are filled in the order of the stations", () => {
    const ticks = { recharge: 4, "shift to port": 1, drop: 2, close: 1, cool: 3, remove: 1 };
    const steps = accumulatorRecursion(accumulatorOf(2, "cold"), fixedTimes(ticks), 12);
    expect(written(steps, "plasticator")).toBe("recharge a 1-5, recharge b 6-10, recharge a 11-15");
    expect(written(steps, "a")).toBe("drop 5-7, close 7-8, cool 8-11, remove 11-12");
    expect(written(steps, "b")).toBe("drop 10-12");
  });

  const common = {
    recharge: 8,
    "shift to port": 3,
    "shift to neutral": 3,
    drop: 2,
    close: 2,
    cool: 6,
    remove: 2,
  };

  test("common chamber: it fills during the drop and stays full for a tick while the valve shifts", () => {
    // 1 mg a tick into 10 mg: after a's drop it holds 4 mg at 5, a shot of 8 mg at 9, and is full from 11 to the drop at 12.
    const cell = accumulatorOf(2, "running", { shot: 8, capacity: 10 });
    const steps = accumulatorRecursion(cell, fixedTimes(common), 21);
    expect(written(steps, "valve")).toBe(
      "shift to port a 0-3, shift to neutral a 5-8, shift to port b 9-12, shift to neutral b 14-17, shift to port a 18-21",
    );
    expect(written(steps, "plasticator")).toBe("recharge a 3-11, recharge b 12-20");
    expect(written(steps, "a")).toBe("drop 3-5, close 5-7, cool 7-13, remove 13-15");
    expect(written(steps, "b")).toBe("drop 12-14, close 14-16, cool 16-22");
  });

  test("common chamber, cold start: the first shot comes before the chamber is full", () => {
    const cell = accumulatorOf(1, "cold", { shot: 8, capacity: 10 });
    const steps = accumulatorRecursion(cell, fixedTimes(common), 24);
    expect(written(steps, "plasticator")).toBe("recharge  0-10, recharge a 11-19");
    expect(written(steps, "valve")).toBe("shift to port a 8-11, shift to neutral a 13-16, shift to port a 23-26");
  });

  test("common chamber: different shots both wait for the larger mass, and each takes its own", () => {
    const stations = ["a", "b"].map((name, k) => ({ name, shot: [8, 4][k]!, moldSteps: ["close"] }));
    const cell: AccumulatorCell = { stations, start: "running", accumulator: "common", capacity: 8 };
    const ticks: Ticks = { ...common, "shift to port": 1, "shift to neutral": 1 };
    const durations: Durations = (_resource, step, _n, station) =>
      step === "recharge" ? [8, 4][station]! : ticks[step]!;
    const steps = accumulatorRecursion(cell, durations, 16);
    expect(written(steps, "valve")).toBe(
      "shift to port a 0-1, shift to neutral a 3-4, shift to port b 9-10, shift to neutral b 12-13, shift to port a 14-15",
    );
    expect(written(steps, "plasticator")).toBe("recharge a 1-9, recharge b 10-14, recharge a 15-23");
  });

  test("common chamber: a screw that is faster than the ram ends its recharge with the drop", () => {
    // Shots of 4 mg into 4 mg: the recharge takes 1 tick, the drop 2.
    const cell = accumulatorOf(1, "running", { shot: 4, capacity: 4 });
    const ticks = { ...common, recharge: 1, "shift to port": 1, "shift to neutral": 1 };
    const steps = accumulatorRecursion(cell, fixedTimes(ticks), 13);
    expect(written(steps, "plasticator")).toBe("recharge a 1-3");
    expect(written(steps, "valve")).toBe("shift to port a 0-1, shift to neutral a 3-4");
  });

  const travel = { "travel in": 1, close: 1, cut: 1, "travel out": 1, cool: 5, remove: 1 };

  test("continuous: two molds wait under the die in turn", () => {
    const cell = continuousOf(2, "running", "end of cut");
    const steps = continuousRecursion(cell, fixedTimes({ ...travel, parison: 6 }), 16);
    expect(written(steps, "plasticator")).toBe("excess a 0-3, parison b 3-9, parison a 9-15, parison b 15-21");
    expect(written(steps, "a")).toBe(
      "travel in 0-1, close 1-2, cut 2-3, travel out 3-4, cool 4-9, remove 9-10, travel in 10-11, close 13-14, cut 14-15, travel out 15-16",
    );
    expect(written(steps, "b")).toBe("travel in 4-5, close 7-8, cut 8-9, travel out 9-10, cool 10-15, remove 15-16");
  });

  test("continuous, shared die zone: a mold travels in beside the one that travels out, and closes when that one is out", () => {
    const cell = continuousOf(2, "running", "start of close", "shared");
    const ticks = { "travel in": 2, close: 1, cut: 1, "travel out": 3, cool: 4, remove: 1, parison: 1 };
    const steps = continuousRecursion(cell, fixedTimes(ticks), 13);
    expect(written(steps, "a")).toBe(
      "travel in 0-2, close 2-3, cut 3-4, travel out 4-7, cool 7-11, remove 11-12, travel in 12-14",
    );
    expect(written(steps, "b")).toBe("travel in 4-6, close 7-8, cut 8-9, travel out 9-12, cool 12-16");
  });

  test.each([
    ["start of close" as const, "excess a 0-1, parison b 1-7, parison a 7-13", "close 7-8, cut 8-9"],
    ["start of cut" as const, "excess a 0-2, parison b 2-8, parison a 8-14", "close 7-8, cut 8-9"],
  ])("continuous: a parison that must be full at the %s ends there", (fullAt, screw, second) => {
    const steps = continuousRecursion(continuousOf(2, "running", fullAt), fixedTimes({ ...travel, parison: 6 }), 13);
    expect(written(steps, "plasticator")).toBe(screw);
    expect(written(steps, "b")).toContain(second);
  });

  test("continuous: one slow mold makes every tail four ticks longer", () => {
    const cell = continuousOf(1, "cold", "end of cut");
    const steps = continuousRecursion(cell, fixedTimes({ ...travel, parison: 6 }), 27);
    expect(written(steps, "plasticator")).toBe(
      "parison a 0-6, parison a 6-12, excess a 12-16, parison a 16-22, excess a 22-26, parison a 26-32",
    );
  });
});
