// Which steps of a cell a log may hold, and under which resource.
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { tracedSteps } from "#cell/layers/withTraces.ts";
import { fixedCell } from "../../support/fixedCell.ts";

const times = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 };
const plan = planCell(fixedCell({ stations: [{ ...times, name: "A" }], shift: 0.25 }));

describe("the steps that a log may hold", () => {
  it("are those that take time, each under the resource whose step it is", () => {
    // The screw and the valve are moved by one process; a log of the floor has a row for each.
    expect(
      tracedSteps(plan, () => undefined)
        .map(({ resource, step }) => `${resource}: ${step}`)
        .toSorted(),
    ).toEqual([
      "A: close",
      "A: cool",
      "A: drop",
      "A: remove",
      "plasticator: recharge",
      "valve: shift to neutral",
      "valve: shift to port",
    ]);
  });

  it("are traced where the log has times of them", () => {
    const values = (resource: string, step: string) => (resource === "A" && step === "cool" ? [9.2, 9.6] : []);
    expect(tracedSteps(plan, values).filter(({ isTraced }) => isTraced)).toEqual([
      { resource: "A", step: "cool", isTraced: true },
    ]);
  });
});
