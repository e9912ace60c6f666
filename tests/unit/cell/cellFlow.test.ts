// The nodes of a run at mean times, in the order in which they start.
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { cellFlow, type FlowNode } from "#cell/run/cellFlow.ts";
import { fixedCell } from "../../support/fixedCell.ts";

const times = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 };

function flowOf(recharge: number, shots: number): readonly FlowNode[] {
  return cellFlow(planCell(fixedCell({ stations: [{ ...times, recharge }], shift: 0.25, start: "cold" })), shots);
}

const dropsIn = (nodes: readonly FlowNode[]): readonly number[] =>
  nodes.filter(({ step }) => step === "drop").map(({ start }) => start);

describe("the flow of a cell at mean times", () => {
  it("ends with the start of the last drop that was asked for", () => {
    const nodes = flowOf(4, 3);
    // By hand: one station repeats each 13.05 s = 0.25 + 1.8 + 0.6 + 9.4 + 1 s, while the screw needs 4 + 1.8 + 0.5 s.
    const drops = dropsIn(nodes);
    expect(drops.map((start) => start - drops[0]!)).toEqual([0, 13.05e6, 26.1e6]);
    expect(Math.max(...nodes.map(({ start }) => start))).toBe(drops[2]);
  });

  it("has all that happens where the cell does not come to so many drops", () => {
    // The screw needs longer for its first charge than any run lasts.
    const nodes = flowOf(2e9, 3);
    expect(nodes.map(({ step }) => step)).toContain("recharge");
    expect(dropsIn(nodes)).toEqual([]);
  });
});
