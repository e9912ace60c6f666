// The finish of an order of a cell with fixed times equals closed forms to the microsecond.
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Order, OrderQuantity } from "#analysis/promise/order.ts";
import { beginOrder, concludeOrder, runOrder, runsWanted, withOrderAnswers } from "#analysis/promise/orderProcedure.ts";
import { orderRunner } from "#analysis/promise/runOrder.ts";
import { measuresOf } from "#analysis/replication/measures.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { runQuantities } from "#cell/run/runQuantities.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { fixedCell } from "../../support/fixedCell.ts";
import { always, exponential, server, takeawayCell } from "../../support/takeawayCell.ts";

const all = (quantity: number): readonly OrderQuantity[] => [{ product: null, quantity }];

function orderFor(scenario: Scenario, quantity: number, more: Partial<Order> = {}): Order {
  const campaigns = [{ scenario, quantities: all(quantity), change: null }];
  return { name: "order", campaigns, due: null, chance: 0.95, replications: 1, ...more };
}

const finishOf = (order: Order): number | null => orderRunner(order)({ replication: 1 }).finish;

/** Every day from 06:00 to 14:00, from a Monday on. */
const earlyShift = {
  begins: "2026-11-30 06:00",
  clockChanges: [],
  off: [],
  operators: [],
  shifts: [{ start: "06:00", end: "14:00", breaks: [], stretches: [], pauses: [] }],
  breaks: "run on",
} as const;

const milliseconds = (min: number, max: number) => fc.integer({ min, max }).map((value) => value / 1000);

describe("the finish of an order with fixed times", () => {
  // [C] One mold with 2 cavities: the first parts are out after v + d + m, each further shot takes max(r + d + 2 v, v + d + m).
  it("of one station is the first cycle and a period a shot", () => {
    fc.assert(
      fc.property(
        fc.record({ r: milliseconds(500, 9000), d: milliseconds(500, 3000), v: milliseconds(0, 400) }),
        fc.record({ close: milliseconds(100, 900), cool: milliseconds(500, 9000), remove: milliseconds(100, 900) }),
        fc.integer({ min: 1, max: 3000 }),
        ({ r, d, v }, { close, cool, remove }, parts) => {
          const scenario = fixedCell({ stations: [{ recharge: r, drop: d, close, cool, remove }], shift: v });
          const turn = v + d + close + cool + remove;
          const period = Math.max(r + d + 2 * v, turn);
          const shots = Math.ceil(parts / 2);
          expect(finishOf(orderFor(scenario, parts))).toBeCloseTo(turn + (shots - 1) * period, 6);
        },
      ),
    );
  });

  // [C] Where the screw sets the pace, shot n begins at n periods and is out v + d + m later, whatever the number of molds.
  it("of several stations at the pace of the screw is a period a shot and one cycle", () => {
    for (const count of [2, 3]) {
      const stations = Array.from({ length: count }, () => ({
        recharge: 6,
        drop: 1.5,
        close: 0.6,
        cool: 3,
        remove: 0.9,
      }));
      const scenario = fixedCell({ stations, shift: 0.25 });
      expect(finishOf(orderFor(scenario, 2001))).toBeCloseTo(1000 * (6 + 1.5 + 0.5) + 0.25 + 1.5 + 4.5, 6);
    }
  });

  // [C] A shift of 28,800 s takes the cycles of 13 s that end within it: 2,215. The next ones begin 24 h after the first.
  it("with a work shift goes on the next day", () => {
    const station = { recharge: 4, drop: 2, close: 1, cool: 8.5, remove: 1 };
    const scenario = { ...fixedCell({ stations: [station], shift: 0.5 }), calendar: earlyShift };
    const perShift = Math.floor(28_800 / 13);
    for (const shots of [1, 2215, 2216, 4431, 30_000]) {
      const before = shots - 1;
      const expected = Math.floor(before / perShift) * 86_400 + ((before % perShift) + 1) * 13;
      expect(finishOf(orderFor(scenario, 2 * shots)), `${shots} shots`).toBe(expected);
    }
  });

  // [C] First product, 600 s of work, second product with a longer cycle from an empty mold.
  it("of two products is the sum of both and the change", () => {
    const station = { recharge: 4, drop: 2, close: 1, cool: 8.5, remove: 1 };
    const scenario = fixedCell({ stations: [station], shift: 0.5 });
    const slower = fixedCell({ stations: [{ ...station, cool: 10.5 }], shift: 0.5 });
    const change = { name: "to canister", kind: "mold", time: always(600) } as const;
    const order: Order = {
      ...orderFor(scenario, 1000),
      campaigns: [
        { scenario, quantities: all(1000), change: null },
        { scenario: slower, quantities: all(500), change },
      ],
    };
    expect(finishOf(order)).toBe(500 * 13 + 600 + 250 * 15);
    const withoutChange = { ...order, campaigns: order.campaigns.map((each) => ({ ...each, change: null })) };
    expect(finishOf(withoutChange)).toBe(500 * 13 + 250 * 15);
  });

  // [C] The molds share the screw in turn: 2 parts each in 16 s. The smaller quantity is complete first.
  it("of two products at the same time is that of the last one", () => {
    const station = { recharge: 6, drop: 1.5, close: 0.6, cool: 3, remove: 0.9 };
    const made = fixedCell({ stations: [station, station], shift: 0.25 });
    const scenario = { ...made, stations: made.stations.map((each, i) => ({ ...each, product: ["a", "b"][i]! })) };
    const quantities = [
      { product: "a", quantity: 20 },
      { product: "b", quantity: 100 },
    ];
    const order = { ...orderFor(scenario, 1), campaigns: [{ scenario, quantities, change: null }] };
    const answer = orderRunner(order)({ replication: 1 });
    // Shots 0, 2, 4 … go to a, and 1, 3, 5 … to b.
    expect(answer.campaigns[0]?.finished).toEqual([18 * 8 + 6.25, 99 * 8 + 6.25]);
    expect(answer.finish).toBe(99 * 8 + 6.25);
  });
});

describe("a run to a quantity", () => {
  const stop = {
    name: "jam",
    resource: "station 01",
    comes: { by: "working", between: exponential(300) },
    repair: exponential(60),
    start: "running",
    by: "itself",
    shift: "any",
    step: "finish",
  } as const;
  const packing = [server("packing", exponential(2.5), { buffer: 40, rejects: 0.1 })];
  const molds = [1, 2].map(() => ({ recharge: 4, drop: 1.5, close: 0.6, cool: 6, remove: 0.9 }));
  const scenario: Scenario = {
    ...takeawayCell({ stations: molds, shift: 0.25, length: 40_000 }, packing, { cavities: 2 }),
    stops: [stop],
  };
  const wanted = { replication: 3, wanted: all(4000), countAt: null, goesOn: true };

  it("ends at the instant of the last part, whatever pace is expected", () => {
    const plan = planCell(scenario);
    const passed: number[] = [];
    runCell(plan, { replication: 3, partReader: (tick) => void passed.push(tick) });
    for (const ticksAPart of [1, 2e6, 3e6, 1e8]) {
      const { reached, good } = runQuantities(plan, { ...wanted, ticksAPart });
      expect(reached).toEqual([passed[3999]]);
      expect(good).toEqual([4000]);
    }
  });

  it("leaves the record of a run that ends there, and counts beyond it", () => {
    const plan = planCell(scenario);
    const { record, reached, counted } = runQuantities(plan, { ...wanted, ticksAPart: 3e6, countAt: 30_000e6 });
    const length = reached[0]! / 1e6;
    const same = runCell(planCell({ ...scenario, run: { ...scenario.run, length } }), { replication: 3 });
    expect(measuresOf(record)).toEqual(measuresOf(same));
    expect(record.elementTimes).toEqual(same.elementTimes);
    const longer = runCell(planCell({ ...scenario, run: { ...scenario.run, length: 30_000 } }), { replication: 3 });
    expect(counted).toBe(longer.takeaway?.good);
  });
});

describe("an order that can never be done", () => {
  const scenario = fixedCell({ stations: [{ recharge: 4, drop: 2, close: 1, cool: 8.5, remove: 1 }], shift: 0.5 });
  const refusal = (order: Order) => {
    const outcome = runOrder(order);
    return outcome.kind === "refused" ? outcome.issues.map(({ code, fate }) => [code, fate]) : [];
  };

  it("is refused before any run where the ideal cycle takes years", () => {
    expect(refusal(orderFor(scenario, 20_000_000))).toEqual([["order-too-long", "cell"]]);
    // On shift for a third of the time.
    expect(refusal(orderFor({ ...scenario, calendar: earlyShift }, 5_000_000))).toEqual([["order-too-long", "cell"]]);
  });

  it("is refused where every part is a reject, as written or as it runs", () => {
    const rejecting = { shotSpread: 0, cavitySpread: 0, rejects: 1 };
    expect(refusal(orderFor({ ...scenario, quality: rejecting }, 100))).toEqual([["order-never", "cell"]]);
    const heavy = { ...rejecting, rejects: 0, heaviest: -0.001, shotSpread: 1e-4 };
    expect(refusal(orderFor({ ...scenario, quality: heavy }, 100))).toEqual([["order-never", "cell"]]);
  });

  it("is refused where the cell stands still, with every wait", () => {
    const order = orderFor(scenario, 100);
    const waiting = [{ process: "station 01", step: "parison drop", lacks: "the valve" }];
    const standstill = { kind: "deadlock", seconds: 12.5, waiting };
    const answer = { task: { replication: 1 }, campaigns: [], finish: null, goodAtDue: null, made: 4, standstill };
    const state = withOrderAnswers(beginOrder(order), [answer]);
    expect(runsWanted(state)).toEqual([]);
    expect(concludeOrder(state)).toMatchObject({ kind: "refused", issues: [{ code: "deadlock", fate: "cell" }] });
  });
});
