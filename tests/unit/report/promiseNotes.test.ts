// What the answer to an order says about its own limits.
import { describe, expect, it } from "vitest";
import type { Campaign, OrderChange } from "#analysis/promise/order.ts";
import { runOrder } from "#analysis/promise/orderProcedure.ts";
import { notes } from "#report/answers/promiseAnswer.ts";
import { fixedCell } from "../../support/fixedCell.ts";

const scenario = fixedCell({ stations: [{ recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 }], shift: 0.25 });

const campaign = (product: string, change: OrderChange | null): Campaign => ({
  scenario: { ...scenario, stations: scenario.stations.map((station) => ({ ...station, product })) },
  quantities: [{ product, quantity: 10 }],
  change,
});

function notesOf(...campaigns: readonly Campaign[]): string {
  const outcome = runOrder({ name: "an order", campaigns, due: null, chance: 0.95, replications: 1 });
  if (outcome.kind === "refused") throw new Error("the order can be made");
  return notes(outcome.study).join(" ");
}

const change: OrderChange = { name: "to blue", kind: "color", time: { kind: "fixed", value: 2400 } };

describe("an order of two products", () => {
  it("names each change that is taken to cost no time", () => {
    expect(notesOf(campaign("white", null), campaign("blue", null), campaign("red", null))).toContain(
      "The change to blue, red takes no time: a best case (enter `changes` with `to: blue`, `to: red`).",
    );
  });

  it("is silent where the change is entered, and where there is none", () => {
    expect(notesOf(campaign("white", null), campaign("blue", change))).not.toContain("no time");
    expect(notesOf(campaign("white", null))).not.toContain("no time");
  });
});
