// What an order uses: sums of its campaigns in each run, and what is left out where an input is missing.
import { describe, expect, it } from "vitest";
import type { Order } from "#analysis/promise/order.ts";
import type { CampaignAnswer, OrderAnswer } from "#analysis/promise/orderAnswer.ts";
import { orderUses } from "#analysis/promise/orderUses.ts";
import type { CostSpec, Scenario } from "#scenario/scenario.ts";
import { scenarioFrom } from "../../support/changedCell.ts";
import { shippedText } from "../../support/reported.ts";
import { campaignMade, oneStation, orderFor, runMade } from "../../support/madeOrder.ts";

const hour = 3600;
const { partMass: _, ...unweighed } = oneStation.stations[0]!;
const value = (measure: string, amount: number, resource = "cell") => ({
  resource,
  measure,
  unit: "",
  value: amount,
});

/** A campaign of so many hours: resin and regrind in kg/h, planned without pause. */
const made = (hours: number, more: Partial<CampaignAnswer> = {}): CampaignAnswer =>
  campaignMade(hours * hour, {
    resin: { bought: 40, surplus: 4 },
    measures: [value("regrind used", 10), value("parts per hour", 500), value("good parts per hour", 400)],
    elementTimes: [{ station: null, element: "APT", seconds: hours * hour }],
    operatorSeconds: { onShift: hours * hour, worked: (hours * hour) / 4 },
    ...more,
  });
const runs = (...campaigns: readonly (readonly CampaignAnswer[])[]): readonly OrderAnswer[] =>
  campaigns.map((each, i) => runMade(1, i + 1, { campaigns: each }));
const orderOf = (...scenarios: readonly Scenario[]): Order => ({
  ...orderFor(oneStation, 10),
  campaigns: scenarios.map((scenario) => ({
    scenario,
    quantities: [{ product: null, quantity: 10 }],
    change: null,
  })),
});
const priced = (costs: Partial<CostSpec>, more: Partial<Scenario> = {}): Scenario => ({
  ...oneStation,
  ...more,
  costs: { currency: "EUR", ...costs },
});
const usesOf = (order: Order, answers: readonly OrderAnswer[]) =>
  orderUses(order, answers).uses.map(({ quantity, unit, values }) => [quantity, unit, values]);

describe("the uses of an order", () => {
  // By hand: 2 h and 3 h in the first run, 2 h and 1 h in the second.
  const answers = runs([made(2), made(3)], [made(2), made(1)]);

  it("are sums over its campaigns in each run", () => {
    const withRegrind = { ...oneStation, operators: 1, regrindLimit: 0.3 };
    expect(usesOf(orderOf(withRegrind, withRegrind), answers)).toEqual([
      ["resin", "kg", [200, 120]],
      ["regrind used", "kg", [50, 30]],
      ["surplus regrind", "kg", [20, 12]],
      ["operator hours on shift", "h", [5, 3]],
      ["operator hours at work", "h", [1.25, 0.75]],
    ]);
    expect(usesOf(orderOf(oneStation, oneStation), answers).map(([quantity]) => quantity)).toEqual([
      "resin",
      "surplus regrind",
    ]);
  });

  it("have a mean with its interval and the range of single runs", () => {
    const [resin] = orderUses(orderOf(oneStation, oneStation), answers).uses;
    // By hand: mean of 200 and 120, sd 80 / √2, t(0.975, 1) = 12.7062.
    expect(resin?.mean).toMatchObject({ count: 2, mean: 160 });
    expect(resin?.mean.halfWidth).toBeCloseTo(12.7062 * 40, 1);
    expect(resin?.single).toMatchObject({ low: 0, method: "Student's t" });
  });

  it("are left out where one campaign of one run lacks an input", () => {
    const lacking = runs([made(2), made(3)], [made(2), made(1, { resin: null, measures: [] })]);
    const withRegrind = { ...oneStation, regrindLimit: 0.3 };
    expect(usesOf(orderOf(withRegrind, withRegrind), lacking)).toEqual([]);
  });

  it("cost each hour at its rates, and each part made", () => {
    // By hand: 42 an hour of planned time, half of which is off shift in the second run; 0.01 a good part of 400 an hour.
    const half = [{ station: null, element: "APT", seconds: hour / 2 }] as const;
    const both = runs([made(2), made(3)], [made(2), made(1, { elementTimes: half })]);
    const order = orderOf(priced({ machine: 42 / hour, packing: 0.01 }), priced({ machine: 42 / hour, packing: 0.01 }));
    const [, , cost] = usesOf(order, both);
    expect(cost?.slice(0, 2)).toEqual(["cost", "EUR"]);
    expect(cost?.[2]).toEqual([expect.closeTo(5 * 42 + 20, 9), expect.closeTo(2.5 * 42 + 12, 9)]);
  });

  it("have the drive energy of all melt", () => {
    // By hand: 30 kW at 150 kg/h are 0.2 kWh/kg; 90 kg/h for two hours, of which 60 kg/h are shots.
    const shipped = scenarioFrom(shippedText("order-by-friday"));
    const melt = [value("melt per hour", 90), ...shipped.stations.map(({ name }) => value("melt per hour", 20, name))];
    const used = orderUses(orderOf(shipped), runs([made(2, { measures: melt })]));
    const energy = used.uses.find(({ quantity }) => quantity === "drive energy");
    expect(energy).toMatchObject({ unit: "kWh", values: [expect.closeTo(36, 6)] });
    expect(used.missing.map(({ item }) => item)).not.toContain("drive energy");
    // Each campaign lacks a key of its own.
    const [capped, lidded] = ["cap", "lid"].map((product) => ({
      ...oneStation,
      stations: [{ ...unweighed, product }],
    }));
    const none = orderUses(orderOf(capped!, lidded!), runs([made(1, { resin: null }), made(1, { resin: null })]));
    expect(none.missing.find(({ item }) => item === "resin")?.keys).toEqual([
      "products.cap.partMass",
      "products.lid.partMass",
    ]);
  });

  it("have no cost without a rate of which the run has the amount", () => {
    const staffed = { operators: 1 };
    const order = (costs: Partial<CostSpec>) => orderOf(priced(costs, staffed), priced(costs, staffed));
    const quantities = (costs: Partial<CostSpec>) => usesOf(order(costs), answers).map(([quantity]) => quantity);
    expect(quantities({ cooling: 1 })).not.toContain("cost");
    // The melt is not measured here, while operators are paid for each hour.
    expect(quantities({ operator: 1 })).toContain("cost");
  });
});

describe("what is left out", () => {
  const missingOf = (scenario: Scenario, answer: CampaignAnswer = made(1)) =>
    Object.fromEntries(orderUses(orderOf(scenario), runs([answer])).missing.map(({ item, keys }) => [item, keys]));

  it("is named with its keys", () => {
    expect(missingOf(oneStation)).toEqual({
      "drive energy": ["product.material", "delivery.drivePower", "delivery.plasticatingRate"],
      cost: ["costs"],
    });
    const massless = {
      ...oneStation,
      stations: [unweighed],
    };
    expect(missingOf(massless, made(1, { resin: null }))).toMatchObject({
      resin: ["products.bottle.partMass"],
    });
  });

  it("of the cost are the rates, while drive energy needs none", () => {
    const found = missingOf(priced({ machine: 1, energy: 1 }));
    expect(Object.keys(found)).not.toContain("cost");
    expect(Object.keys(found)).not.toContain("machine");
    expect(found["resin"]).toEqual(["costs.resin"]);
    expect(found["heating"]).toEqual(["costs.heating"]);
  });

  it("is named for every campaign", () => {
    const cap = [{ ...unweighed, product: "cap" }];
    const order = orderOf(oneStation, { ...oneStation, stations: cap });
    const { missing } = orderUses(order, runs([made(1), made(1, { resin: null })]));
    expect(missing.find(({ item }) => item === "resin")).toEqual({
      item: "resin",
      keys: ["products.cap.partMass"],
    });
    expect(missing.filter(({ item }) => item === "cost")).toEqual([{ item: "cost", keys: ["costs"] }]);
  });
});
