// Orders, due dates and work shifts in one line, and the orders of a scenario.
import { describe, expect, it } from "vitest";
import { isFault } from "#foundation/fault.ts";
import { parseDue } from "#scenario/order/dueText.ts";
import { parseOrder } from "#scenario/order/orderText.ts";
import { calendarText, parseShifts } from "#scenario/order/shiftsText.ts";
import { parseStart } from "#scenario/order/startText.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { shippedText } from "../../support/reported.ts";

const week = (...set: readonly string[]) =>
  readScenario(shippedText("two-shifts-one-color"), { name: "week", file: "week.yaml", set });
const withShifts = (text: string, date = "2026-11-30", time = "00:00") => {
  const pattern = parseShifts(text);
  return isFault(pattern) ? pattern : week("changes=null", "calendar=" + calendarText(pattern, date, time));
};
const hour = 3600;

describe("work shifts in one line", () => {
  // 2026-11-30 is a Monday (ISO 8601 week date 2026-W49-1) [C: Python's datetime.date.isocalendar].
  it.each([
    [
      "2 x 8 h, mon-fri",
      [
        [6, 22],
        [30, 46],
        [54, 70],
        [78, 94],
        [102, 118],
      ],
    ],
    ["3 x 8 h, mon-sat", [[6, 150]]],
    ["3 × 7.5 h, sat", [[126, 148.5]]],
    [
      "1 x 10 h, Monday-Thursday, from 07:30",
      [
        [7.5, 17.5],
        [31.5, 41.5],
        [55.5, 65.5],
        [79.5, 89.5],
      ],
    ],
    ["2 x 10 h, tue, from 22:00", [[46, 66]]],
    [
      "8 h, mon, wed, fri",
      [
        [6, 14],
        [54, 62],
        [102, 110],
      ],
    ],
    ["24 h, every day", [[0, 168]]],
    [
      "24 h, sat-mon",
      [
        [0, 30],
        [126, 168],
      ],
    ],
  ])("%s is on shift in the hours %j of the week", (text, hours) => {
    const read = withShifts(text);
    const off = ("scenario" in read ? read.scenario?.calendar?.off : undefined) ?? [];
    const edges = [0, ...off.flatMap(({ from, until }) => [from, until]), 7 * 24 * hour];
    const on = Array.from({ length: edges.length / 2 }, (_, i) => [edges[2 * i]! / hour, edges[2 * i + 1]! / hour]);
    expect(on.filter(([from, until]) => until! > from!)).toEqual(hours);
  });

  it.each([
    ["4 x 8 h, mon-fri", "is 32 h; a day has 24 h"],
    ["0 x 8 h, mon-fri", "has no working time"],
    ["two shifts", "no number of work shifts"],
    ["2 x 8, mon-fri", "no number of work shifts"],
    ["1 x 7.33 h, mon", "whole minute"],
    ["2 x 8 h", "on which days"],
    ["2 x 8 h, mo-fr", '"mo-fr" names no days'],
    ["2 x 8 h, mon-", '"mon-" names no days'],
    ["2 x 8 h, mon-fri, from 25:00", "not the start of a work shift"],
    ["2 x 8 h, mon-fri, from 06:00, from 07:00", "not the start of a work shift"],
  ])("%s is refused: %s", (text, says) => {
    const read = parseShifts(text);
    expect(read).toMatchObject({ code: "shifts-form", message: expect.stringContaining(says) });
  });

  it("reads a start with and without a time of day, and refuses others", () => {
    expect(parseStart("2026-11-30 06:00")).toEqual({ date: "2026-11-30", time: "06:00" });
    expect(parseStart("2026-11-30")).toEqual({ date: "2026-11-30" });
    for (const text of ["monday", "2026-02-30", "2026-11-30 6:00", "2026-11-30 24:00", ""]) {
      expect(parseStart(text)).toMatchObject({ code: "start-form" });
    }
  });
});

describe("an order in one line", () => {
  it.each([
    ["200000 parts", { quantity: 200_000 }],
    ["1 part", { quantity: 1 }],
    ["50000 parts of blue bottle", { quantity: 50_000, product: "blue bottle" }],
    ["50000 of bottle of glue", { quantity: 50_000, product: "bottle of glue" }],
  ])("%s is read", (text, order) => expect(parseOrder(text)).toEqual(order));

  it.each([
    ["200,000 parts", "200000"],
    ["200 000 parts", "200000"],
    ["200000", "200000 parts"],
    ["0 parts", "1 to 1000000000"],
    ["2e9 parts", "1 to 1000000000"],
    ["1.5 parts", "whole number"],
    ["all of them", "parts"],
    ["", "parts"],
  ])("%j is refused and the remedy names %s", (text, says) => {
    const read = parseOrder(text);
    expect(isFault(read) ? read.remedy : "").toContain(says);
  });
});

describe("a due date", () => {
  const dueAt = (due: string, ...set: readonly string[]) =>
    week(...set, `orders=[{ quantity: 100 parts, due: ${JSON.stringify(due)} }]`);

  // The week begins on Monday 2026-03-23 at 00:00; on the 29th the clocks go on at 02:00.
  it.each([
    ["2026-03-27 14:00", 4 * 24 + 14],
    ["2026-03-27T14:00", 4 * 24 + 14],
    ["2026-03-29 14:00", 6 * 24 + 13],
    ["Friday 14:00", 4 * 24 + 14],
    ["fri at 9:05", 4 * 24 + 9 + 5 / 60],
    ["Monday 06:00", 6],
    ["mon 00:00", 7 * 24 - 1],
    ["5 d", 5 * 24],
    ["90 min", 1.5],
  ])("%s is %s h after the start", (due, hours) => {
    const { scenario, issues } = dueAt(due);
    expect(issues.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(scenario?.orders).toEqual([{ product: "product", quantity: 100, due: expect.closeTo(hours * hour, 6) }]);
  });

  it.each([
    ["2026-03-22 14:00", "due-past"],
    ["2026-03-23 00:00", "due-past"],
    ["Friday", "due-form"],
    ["2026-03-27", "due-form"],
    ["2026-02-30 14:00", "due-form"],
    ["Friday 24:00", "due-form"],
    ["someday 14:00", "due-form"],
    ["0 d", "due-form"],
    ["5", "due-form"],
    ["-1 d", "due-form"],
  ])("%s is refused with %s at its place", (due, code) => {
    const { scenario, issues } = dueAt(due);
    expect(scenario).toBeUndefined();
    const [issue] = issues.filter(({ severity }) => severity === "error");
    expect(issue).toMatchObject({ code, path: "orders[0].due", value: JSON.stringify(due) });
    expect(isFault(parseDue(due))).toBe(code === "due-form");
  });

  it("needs a calendar where it is a date", () => {
    const without = ["calendar=null", "changes=null"];
    expect(dueAt("5 d", ...without).scenario?.orders?.[0]?.due).toBe(5 * 24 * hour);
    expect(dueAt("Friday 14:00", ...without).issues.map(({ code }) => code)).toContain("due-calendar");
  });
});

describe("the orders of a scenario", () => {
  it.each([
    ["[{ quantity: 100 parts, product: bottel }]", "order-product", "no product"],
    ["[{ quantity: 0 parts }]", "order-form", "outside 1 to"],
    ["[{ quantity: 100.5 parts }]", "order-form", "whole number"],
    ["[{ quantity: 100 }]", "unit-missing", "100 parts"],
    ["[{ quantity: '1,000 parts' }]", "thousands-separator", ""],
    ["[{ quantity: 1 parts, due: 1 d }, { quantity: 1 parts }]", "due-differs", "different due dates"],
    ["[{ product: product }]", "missing", "missing"],
  ])("%s is refused with %s", (orders, code, says) => {
    const { scenario, issues } = week(`orders=${orders}`);
    expect(scenario).toBeUndefined();
    const [issue] = issues.filter(({ severity }) => severity === "error");
    expect(issue).toMatchObject({ message: expect.stringContaining(says) });
    expect(issue?.code).toBe(code);
  });

  it("have a product each, where the cell has several", () => {
    const products = [
      "product=null",
      "products={ clear: { partMass: 42 g, flash: 30 % of part, material: HDPE }, blue: { partMass: 42 g, flash: 30 % of part, material: HDPE } }",
    ];
    const read = (orders: string) => week(...products, "stations.product=clear", `orders=${orders}`);
    expect(
      read("[{ quantity: 5 parts, product: clear, due: 120 h }, { quantity: 7 parts, product: blue, due: 5 d }]")
        .scenario?.orders,
    ).toEqual([
      { product: "clear", quantity: 5, due: 5 * 24 * hour },
      { product: "blue", quantity: 7, due: 5 * 24 * hour },
    ]);
    expect(read("[{ quantity: 5 parts }]").issues.map(({ message }) => message)).toContain(
      "The cell has several products.",
    );
    const misspelt = read("[{ quantity: 5 parts, product: bleu }]").issues.find(({ code }) => code === "order-product");
    expect(misspelt?.remedy).toBe("Write one of `clear`, `blue`.");
  });

  it("may have a change before a product, without a date", () => {
    const products = [
      "product=null",
      "products={ clear: { partMass: 42 g, flash: 30 % of part }, blue: { partMass: 42 g, flash: 30 % of part } }",
    ];
    const read = (change: string) => week(...products, "stations.product=clear", `changes=[${change}]`);
    const written = "name: to blue, kind: color, to: blue, time: 25 min";
    expect(read(`{ ${written}, residue: 1 % }`).scenario).toMatchObject({
      changeovers: [
        { name: "to blue", kind: "color", to: "blue", purge: { residue: 0.01, screw: 2.4, manifold: 0.35 } },
      ],
    });
    expect(read(`{ ${written} }`).scenario?.changes).toBeUndefined();
    for (const wrong of [`{ ${written}, after: 5 h }`, `{ ${written.replace("to: blue", "to: red")} }`]) {
      expect(read(wrong).issues.map(({ code }) => code)).toContain("change-to");
    }
  });
});
