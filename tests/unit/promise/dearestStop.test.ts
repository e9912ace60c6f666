// Which stop of several is offered with half its repair: the one that takes most of the time of the cell.
import { describe, expect, it } from "vitest";
import { orderLevers } from "#analysis/promise/orderLevers.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { always, server } from "../../support/takeawayCell.ts";

/** Two stations make two parts in 7 s, the time of the screw: 0.5 s to the port, 2 s drop, 0.5 s back, 4 s recharge. */
const cell: Scenario = {
  ...oneStation,
  stations: ["side 1", "side 2"].map((name) => ({ ...oneStation.stations[0]!, name })),
  takeaway: [server("belt", always(2), { buffer: 9 })],
  orders: [{ product: "bottle", quantity: 100 }],
};

const after = (seconds: number): StopSpec["comes"] => ({ by: "calendar", between: always(seconds) });
function stop(name: string, resource: string, comes: StopSpec["comes"], repair: number): readonly StopSpec[] {
  const resources = resource === "every station" ? ["side 1", "side 2"] : [resource];
  const rest = { start: "running", by: "itself", shift: "any", step: "finish" } as const;
  return resources.map((each) => ({ name, resource: each, comes, repair: always(repair), ...rest }));
}

const more = { ...oneStation.stations[0]!, name: "side 3" };

/** A cell of which only the repairs and the number of stations may change. */
function offered(...stops: readonly (readonly StopSpec[])[]): readonly string[] {
  const scenario = { ...cell, stops: stops.flat() };
  const vary = (settings: readonly string[]): Scenario | undefined => {
    if (settings.includes("stations.count=3")) return { ...scenario, stations: [...cell.stations, more] };
    const halved = settings.map((each) => /^stops\.(.*)\.repair/u.exec(each)?.[1]);
    if (halved.includes(undefined)) return undefined;
    const repaired = scenario.stops.map((each) => (halved.includes(each.name) ? { ...each, repair: always(1) } : each));
    return { ...scenario, stops: repaired };
  };
  const order = { name: "", campaigns: [], due: 3600, chance: 0.95, replications: null };
  const levers = orderLevers(vary, order);
  expect(levers.at(-1)).toMatchObject({ name: "one station more", effort: "station" });
  return levers.filter(({ effort }) => effort === "stop").map(({ name }) => name);
}

describe("the stop that takes most of the time", () => {
  // By hand: 120 s in 1,200 s are 10 %, 72 s in 1,200 s are 6 %.
  it("has the largest repair over the time between", () => {
    const [often, rare] = [stop("often", "plasticator", after(1200), 120), stop("rare", "valve", after(1200), 72)];
    expect(offered(often, rare)).toEqual(["half the time of often"]);
    expect(offered(rare, often)).toEqual(["half the time of often"]);
    expect(offered()).toEqual([]);
  });

  // By hand: 120 s in 1,200 s of one of two stations are 5 % of the cell, of both of them 10 %.
  it("counts one of n stations with 1/n", () => {
    const screw = stop("heater", "plasticator", after(1200), 72);
    expect(offered(stop("jam", "side 1", after(1200), 120), screw)).toEqual(["half the time of heater"]);
    expect(offered(stop("jam", "every station", after(1200), 120), screw)).toEqual(["half the time of jam"]);
  });

  // By hand: 100 cycles of the screw are 100 shots, 700 s; of a station 1,400 s; of the belt 100 parts, 350 s.
  it.each([
    ["plasticator", 700],
    ["valve", 700],
    ["every station", 1400],
    ["belt", 350],
  ])("takes the cycles of %s by their time", (resource, between) => {
    const counted = stop("counted", resource, { by: "cycles", cycles: 100 }, 60);
    const known = (seconds: number) => stop("known", "plasticator", after(seconds), 60);
    expect(offered(known(1.02 * between), counted)).toEqual(["half the time of counted"]);
    expect(offered(counted, known(0.98 * between))).toEqual(["half the time of known"]);
  });
});

describe("the levers", () => {
  const order = { name: "", campaigns: [], due: null, chance: 0.95, replications: null };

  it("are none where the scenario cannot be read", () => {
    expect(orderLevers(() => undefined, order)).toEqual([]);
  });

  it("leave out a change with which the order cannot be made, and put off the last product", () => {
    const orders = [
      { product: "bottle", quantity: 5 },
      { product: "cap", quantity: 6 },
    ];
    const changes = [{ name: "to red", kind: "color", at: 60, time: { kind: "fixed", value: 60 } }] as const;
    const scenario = { ...oneStation, orders, changes };
    const vary = (settings: readonly string[]) =>
      settings.includes("changes.to red=null")
        ? undefined
        : { ...scenario, orders: settings.includes("orders[1]=null") ? orders.slice(0, 1) : orders };
    const levers = orderLevers(vary, { ...order, due: 1000 });
    expect(levers.map(({ name, settings }) => [name, settings])).toEqual([
      ["cap after the due date", ["orders[1]=null"]],
    ]);
    expect(levers[0]?.order).toMatchObject({ name: "5 parts", chance: 0.95, replications: null });
  });
});
