// The levers of an order: which are offered, and that each is what its settings say.
import { describe, expect, it } from "vitest";
import { isFault } from "#foundation/fault.ts";
import { orderLevers } from "#analysis/promise/orderLevers.ts";
import { orderOf } from "#analysis/promise/orderCampaigns.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Vary } from "#analysis/changes/levers.ts";
import { shippedText } from "../../support/reported.ts";

const wish = { chance: 0.95, replications: null };
const varied =
  (name: string, ...given: readonly string[]): Vary =>
  (more) =>
    readSettled(shippedText(name), { name, file: `${name}.yaml`, set: [...given, ...more] }).scenario;
const friday = (...given: readonly string[]) => varied("order-by-friday", ...given);
function leversOf(vary: Vary) {
  const order = orderOf(vary, [], wish);
  return isFault(order) ? [] : orderLevers(vary, order);
}
const namesOf = (vary: Vary) => leversOf(vary).map(({ name }) => name);
const day = 86_400;

describe("an order of two colors", () => {
  it("is two campaigns with the change between them, of the same stations", () => {
    const order = orderOf(friday(), [], wish);
    expect(order).toMatchObject({
      name: "150000 parts of natural bottle, 50000 parts of blue bottle",
      due: 4 * day + 8 * 3600,
      chance: 0.95,
      campaigns: [
        { quantities: [{ product: "natural bottle", quantity: 150_000 }], change: null },
        { quantities: [{ product: "blue bottle", quantity: 50_000 }], change: { name: "to blue", kind: "color" } },
      ],
    });
    const products = isFault(order) ? [] : order.campaigns.map(({ scenario }) => scenario.stations[0]!.product);
    expect(products).toEqual(["natural bottle", "blue bottle"]);
  });

  it("is one campaign where the stations make both products at once", () => {
    const vary = friday(
      "stations=[{ name: a, product: natural bottle, cavities: 4, steps: { close: 1 s, blow: 1 s, cool: 7 s, vent: 1 s, open: 1 s, remove: 1 s, clear: { time: 1 s } } }, { name: b, product: blue bottle, cavities: 4, steps: { close: 1 s, blow: 1 s, cool: 7 s, vent: 1 s, open: 1 s, remove: 1 s, clear: { time: 1 s } } }]",
    );
    const order = orderOf(vary, [], wish);
    expect(order).toMatchObject({
      campaigns: [{ quantities: [{ product: "natural bottle" }, { product: "blue bottle" }], change: null }],
    });
  });

  it("adds up orders of one product that follow each other", () => {
    const items = [3, 4].map((count) => `{ product: blue bottle, quantity: ${count} parts }`);
    const order = orderOf(friday(`orders=[${items.join(", ")}]`), [], wish);
    expect(order).toMatchObject({ campaigns: [{ quantities: [{ quantity: 7 }] }], due: null });
  });

  it("is refused where nothing is ordered, or where no station can make it", () => {
    expect(orderOf(friday("orders=null"), [], wish)).toMatchObject({ code: "order-missing" });
    const heavy = friday("products.blue bottle.partMass=200 g");
    expect(orderOf(heavy, [], wish)).toMatchObject({ code: "order-setup", message: expect.stringContaining("blue") });
  });
});

describe("the levers of an order", () => {
  it("come in the order of effort, with settings that the reader takes", () => {
    const levers = leversOf(friday());
    expect(levers.map(({ name }) => name)).toEqual([
      "blue bottle after the due date",
      "half the time of stuck flash",
      "cooling −5 %",
      "2 h overtime a day",
      "one operator more",
      "8 h work shift more a day",
      "one station more",
    ]);
    for (const { settings, order } of levers) {
      expect(orderOf(friday(...settings), [], wish)).toEqual(order);
    }
  });

  it("have Saturday only where one lies before the due date", () => {
    const monday = "orders.*.due=2026-12-07 14:00";
    expect(namesOf(friday())).not.toContain("work on Saturday");
    expect(namesOf(friday(monday))).toContain("work on Saturday");
    const [saturday] = leversOf(friday(monday)).filter(({ name }) => name === "work on Saturday");
    expect(saturday?.settings).toEqual([
      "calendar.shifts[0].days=[mon, tue, wed, thu, fri, sat]",
      "calendar.shifts[1].days=[mon, tue, wed, thu, fri, sat]",
    ]);
  });

  it.each([
    ["06:00", "22:00", ["2 h overtime a day", "8 h work shift more a day"]],
    ["06:00", "05:00", ["1 h overtime a day"]],
    ["06:00", "06:00", []],
  ])("fill the day from %s to %s up with %j", (start, end, names) => {
    const vary = friday(`calendar.shifts=[{ start: ${start}, end: ${end} }]`);
    expect(namesOf(vary).filter((name) => /overtime|work shift/u.test(name))).toEqual(names);
  });

  it("keep days, operators and breaks of the work shifts", () => {
    const shift =
      "{ name: 'late, long', days: [mon, fri], start: 14:00, end: 22:00, operators: 1, breaks: [{ at: 18:00, time: 30 min }] }";
    const [lever] = leversOf(friday(`calendar.shifts=[${shift}]`)).filter(({ effort }) => effort === "shift");
    const shifts = lever?.order.campaigns[0]?.scenario.calendar?.shifts;
    const [own, more] = [shifts?.[0], shifts?.[1]];
    expect(own).toMatchObject({
      name: "late, long",
      days: ["mon", "fri"],
      operators: 1,
      breaks: [{ at: "18:00", time: 1800 }],
    });
    expect(more).toMatchObject({ days: ["mon", "fri"], start: "22:00", end: "06:00", operators: 1, breaks: [] });
  });

  it("have no shorter cooling where the window does not allow it", () => {
    // After 3 s the wall is too hot already.
    const reach = (cool: string) => namesOf(friday(`stations.steps.cool=${cool}`));
    expect(reach("9 s")).toContain("cooling −5 %");
    expect(reach("3 s")).not.toContain("cooling −5 %");
  });

  it("put off a planned change where there is one", () => {
    const vary = varied("two-shifts-one-color", "orders=[{ quantity: 70000 parts, due: Friday 14:00 }]");
    // Without a wall the window has no limit of the cooling time.
    expect(namesOf(vary)).toContain("cooling −5 %, window not known");
    expect(leversOf(vary)[0]).toMatchObject({ name: "to blue after the order", settings: ["changes.to blue=null"] });
  });
});
