// More work shifts for an order: which are offered, with which settings, by hand.
import { describe, expect, it } from "vitest";
import { shiftLevers } from "#analysis/promise/orderShiftLevers.ts";
import type { CalendarSpec, ShiftSpec } from "#scenario/scenario.ts";
import { oneStation } from "../../support/madeOrder.ts";

const hour = 3600;
const week = 7 * 24 * hour;

type Shift = Pick<ShiftSpec, "start" | "end"> & Partial<ShiftSpec>;
/** From a Monday 06:00 on; the place of a work shift in the run is found anew. */
const calendarOf = (shifts: readonly Shift[]): CalendarSpec => ({
  begins: "2026-11-30 06:00",
  clockChanges: [],
  off: [],
  operators: [],
  shifts: shifts.map((shift) => ({ breaks: [], stretches: [], pauses: [], ...shift })),
  breaks: "run on",
});
const offered = (shifts: readonly Shift[], due: number | null = week) =>
  shiftLevers({ ...oneStation, operators: 1, calendar: calendarOf(shifts) }, due).map(({ name, effort, settings }) => [
    effort,
    name,
    ...settings,
  ]);
const workdays = ["mon", "tue", "wed", "thu", "fri"] as const;

describe("more work shifts", () => {
  it("are none without any", () => {
    expect(shiftLevers(oneStation, week)).toEqual([]);
    expect(offered([])).toEqual([]);
  });

  it("are overtime of two hours, and another one of eight", () => {
    const levers = [
      ["overtime", "2 h overtime a day", "calendar.shifts[0].end=15:30"],
      [
        "shift",
        "8 h work shift more a day",
        "calendar.shifts=[{ start: 06:00, end: 13:30 }, { name: 'more', start: 13:30, end: 21:30 }]",
      ],
    ];
    expect(offered([{ start: "06:00", end: "13:30" }])).toEqual(levers);
    // Without a due date as well.
    expect(offered([{ start: "06:00", end: "13:30" }], null)).toEqual(levers);
  });

  it.each([
    ["06:00", "04:40", ["1.33 h overtime a day"]],
    ["06:00", "04:00", ["2 h overtime a day"]],
    ["06:00", "03:20", ["2 h overtime a day", "2.67 h work shift more a day"]],
    ["06:00", "06:00", []],
  ])("fill up what the day from %s to %s leaves", (start, end, names) => {
    expect(offered([{ start, end }]).map(([, name]) => name)).toEqual(names);
  });

  it("follow the work shift before the longest time without one, up to the next start", () => {
    const names = (...shifts: readonly Shift[]) =>
      offered(shifts).map(([, name, setting]) => [name, setting?.slice(0, 24)]);
    expect(names({ start: "06:00", end: "14:00" }, { start: "15:00", end: "02:00" })).toEqual([
      ["2 h overtime a day", "calendar.shifts[1].end=0"],
      ["4 h work shift more a day", "calendar.shifts=[{ start"],
    ]);
    // The end of the first one lies within the second.
    expect(
      offered([
        { start: "06:00", end: "14:00" },
        { start: "10:00", end: "18:00" },
      ])[0],
    ).toContain("calendar.shifts[1].end=20:00");
    // The second one goes on over midnight and covers the end of the first.
    expect(
      offered([
        { start: "14:00", end: "23:00" },
        { start: "22:00", end: "06:00" },
      ])[0],
    ).toContain("calendar.shifts[1].end=08:00");
  });

  it("are only those that give time before the due date", () => {
    const day = [
      { start: "06:00", end: "10:00" },
      { start: "12:00", end: "22:00" },
    ];
    expect(offered(day, 5.5 * hour)).toEqual([]);
    expect(offered(day, 16 * hour)).toEqual([]);
    expect(offered(day, 17 * hour)).toHaveLength(2);
  });

  it("are those of Friday on Saturday, in the order of the week", () => {
    const saturday = (...shifts: readonly Shift[]) => offered(shifts).filter(([effort]) => effort === "saturday");
    const early = { start: "06:00", end: "14:00", days: workdays };
    const late = { start: "14:00", end: "22:00" };
    const setting = (i: number) => `calendar.shifts[${i}].days=[mon, tue, wed, thu, fri, sat]`;
    const name = "work on Saturday";
    expect(saturday(early, { ...late, days: ["mon", "tue"] })).toEqual([["saturday", name, setting(0)]]);
    expect(saturday({ ...late, days: ["sat", "fri"] }, early)).toEqual([["saturday", name, setting(1)]]);
    expect(saturday(early, { ...late, days: ["fri"] })[0]?.slice(2)).toEqual([
      setting(0),
      "calendar.shifts[1].days=[fri, sat]",
    ]);
    expect(saturday({ ...early, days: ["mon"] })).toEqual([]);
    expect(saturday({ start: "06:00", end: "14:00" })).toEqual([]);
  });

  it("are written as a scenario writes them", () => {
    const [, [, , setting] = []] = offered([
      {
        name: "crew's, own",
        days: ["mon", "fri"],
        start: "06:00",
        end: "14:00",
        operators: 1,
        breaks: [
          { at: "09:00", time: 900 },
          { at: "12:00", time: 1800 },
        ],
      },
    ]).filter(([effort]) => effort !== "saturday");
    expect(setting).toBe(
      "calendar.shifts=[{ name: 'crew''s, own', days: [mon, fri], start: 06:00, end: 14:00, operators: 1, breaks: [{ at: 09:00, time: 900 s }, { at: 12:00, time: 1800 s }] }, { name: 'more', days: [mon, fri], start: 14:00, end: 22:00, operators: 1 }]",
    );
  });
});
