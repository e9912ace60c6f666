// From the orders of a scenario to campaigns: their set-ups, their names and what is done between them.
import { describe, expect, it } from "vitest";
import { isFault } from "#foundation/fault.ts";
import { orderOf } from "#analysis/promise/orderCampaigns.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderSpec, Scenario } from "#scenario/scenario.ts";
import { oneStation } from "../../support/madeOrder.ts";

const wish = { chance: 0.9, replications: 5 };
const station = oneStation.stations[0]!;
const change = {
  name: "to cap",
  kind: "color",
  time: { kind: "fixed", value: 60 },
} as const;

/** A cell whose stations make these products; settings set up all of them anew. */
const cell = (products: readonly string[], orders: readonly OrderSpec[]): Scenario => ({
  ...oneStation,
  stations: products.map((product, i) => ({
    ...station,
    name: `side ${i}`,
    product,
  })),
  changeovers: [{ ...change, to: "cap" }],
  orders,
});
function orderFrom(products: readonly string[], orders: readonly OrderSpec[], seen: (readonly string[])[] = []): Order {
  const order = orderOf(
    (settings) => {
      seen.push(settings);
      return cell(settings.length > 1 ? ["set up"] : products, orders);
    },
    ["own=1"],
    wish,
  );
  if (isFault(order)) throw new Error(order.message);
  return order;
}
const quantitiesOf = ({ campaigns }: Order) =>
  campaigns.map(({ quantities }) => quantities.map(({ product, quantity }) => [product, quantity]));

describe("the campaigns of orders", () => {
  it("have no names where the cell makes one product", () => {
    const order = orderFrom(["bottle"], [{ product: "bottle", quantity: 9 }]);
    expect([order.name, quantitiesOf(order)]).toEqual(["9 parts", [[[null, 9]]]]);
    expect(order).toMatchObject({ ...wish, due: null });
  });

  it("are set up by their settings, with a change before each that has one", () => {
    const seen: (readonly string[])[] = [];
    const orders = ["bottle", "cap", "lid", "bottle"].map((product) => ({
      product,
      quantity: 10,
    }));
    const order = orderFrom(["bottle"], orders, seen);
    expect(seen).toEqual([["own=1"], ["own=1", 'stations.*.product="cap"'], ["own=1", 'stations.*.product="lid"']]);
    expect(order.campaigns.map(({ scenario }) => scenario.stations[0]!.product)).toEqual([
      "bottle",
      "set up",
      "set up",
      "bottle",
    ]);
    expect(order.campaigns.map((campaign) => campaign.change)).toEqual([null, change, null, null]);
    expect(quantitiesOf(order)).toEqual([[["bottle", 10]], [["cap", 10]], [["lid", 10]], [["bottle", 10]]]);
  });

  it("need no change at the start", () => {
    const [first] = orderFrom(["bottle"], [{ product: "cap", quantity: 10 }]).campaigns;
    expect(first?.change).toBeNull();
  });

  it("hold what stations make at the same time, each product once", () => {
    const orders = [
      { product: "a", quantity: 10 },
      { product: "b", quantity: 20 },
      { product: "a", quantity: 5 },
    ];
    const order = orderFrom(["a", "b"], orders);
    expect(quantitiesOf(order)).toEqual([
      [
        ["a", 15],
        ["b", 20],
      ],
    ]);
    expect(order.name).toBe("10 parts of a, 20 parts of b, 5 parts of a");
  });

  it("have the change to any of the products that are made at the same time", () => {
    const set = (settings: readonly string[]): Scenario =>
      cell(settings.length > 0 ? ["cap", "lid"] : ["bottle"], [
        { product: "bottle", quantity: 1 },
        { product: "lid", quantity: 1 },
      ]);
    const order = orderOf((settings) => ({ ...set(settings), changeovers: [{ ...change, to: "lid" }] }), [], wish);
    expect(isFault(order) ? [] : order.campaigns.map((campaign) => campaign.change)).toEqual([null, change]);
  });

  it("are due when the last dated one is", () => {
    const orders = [
      { product: "bottle", quantity: 1, due: 50 },
      { product: "bottle", quantity: 1, due: 100 },
      { product: "bottle", quantity: 1 },
    ];
    expect(orderFrom(["bottle"], orders).due).toBe(100);
  });

  it("are refused with what could be done", () => {
    expect(orderOf(() => undefined, [], wish)).toMatchObject({
      code: "order-missing",
      path: "orders",
      option: "--order",
    });
    expect(orderOf(() => cell(["bottle"], []), [], wish)).toMatchObject({
      code: "order-missing",
    });
    const vary = (settings: readonly string[]) =>
      settings.length === 0 ? cell(["bottle"], [{ product: "cap", quantity: 1 }]) : undefined;
    expect(orderOf(vary, [], wish)).toMatchObject({
      code: "order-setup",
      expected: 'a cell that `--set "stations.*.product=cap"` gives without a fault',
    });
  });
});
