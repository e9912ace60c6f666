// Dates and wall time as seconds of a run: midnights, weekends, leap years and clock changes.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { between, isWithin, occurrences, overlapsOne, secondsAtWall, united } from "#engine/calendar.ts";
import { dateOf, daysOf, weekdayOf } from "#foundation/civilDate.ts";

const hour = 3600;
const at = (date: string, hours: number): number => daysOf(date)! * 86_400 + hours * hour;

describe("a date", () => {
  it("is a whole number of days, the same as in ECMAScript's Date", () => {
    for (const date of ["1970-01-01", "1999-12-31", "2000-02-29", "2024-02-29", "2026-03-29", "2100-03-01"]) {
      expect(daysOf(date)).toBe(Date.parse(`${date}T00:00:00Z`) / 86_400_000);
      expect(dateOf(daysOf(date)!)).toBe(date);
      const named = new Date(`${date}T00:00:00Z`).getUTCDay();
      expect(weekdayOf(daysOf(date)!)).toBe(["sun", "mon", "tue", "wed", "thu", "fri", "sat"][named]);
    }
  });

  it.each(["2026-02-29", "2100-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "26-01-01", "2026-1-1"])(
    "is undefined for %s",
    (text) => {
      expect(daysOf(text)).toBeUndefined();
    },
  );
});

describe("wall time", () => {
  const plain = { begins: at("2026-03-23", 0), changes: [] };
  // Directive 2000/84/EC [M]: Central European clocks go forward at 02:00 on 29 March 2026 and back at 03:00 on 25 October 2026.
  const spring = { begins: at("2026-03-28", 0), changes: [{ at: at("2026-03-29", 2), by: hour }] };
  const autumn = { begins: at("2026-10-24", 0), changes: [{ at: at("2026-10-25", 3), by: -hour }] };

  it("passes at the rate of the run without a clock change", () => {
    expect(secondsAtWall(at("2026-03-24", 6), plain)).toBe(30 * hour);
  });

  it("loses an hour when the clocks go forward: 00:00 to 06:00 take five hours, and 02:30 is the instant of the change", () => {
    expect(secondsAtWall(at("2026-03-29", 1.5), spring)).toBe(25.5 * hour);
    expect(secondsAtWall(at("2026-03-29", 2.5), spring)).toBe(26 * hour);
    expect(secondsAtWall(at("2026-03-29", 3), spring)).toBe(26 * hour);
    expect(secondsAtWall(at("2026-03-29", 6), spring)).toBe(29 * hour);
  });

  it("gains an hour when the clocks go back: 00:00 to 06:00 take seven hours, and 02:30 is the first of two", () => {
    expect(secondsAtWall(at("2026-10-25", 2.5), autumn)).toBe(26.5 * hour);
    expect(secondsAtWall(at("2026-10-25", 3), autumn)).toBe(28 * hour);
    expect(secondsAtWall(at("2026-10-25", 6), autumn)).toBe(31 * hour);
  });

  it("agrees with the time zone database of the platform over a year of night shifts", () => {
    const year = {
      begins: at("2026-01-01", 0),
      changes: [
        { at: at("2026-03-29", 2), by: hour },
        { at: at("2026-10-25", 3), by: -hour },
      ],
    };
    // Intl's data of Europe/Berlin give the instants at which the wall time is 22:00.
    const format = new Intl.DateTimeFormat("en-GB", {
      timeZone: "Europe/Berlin",
      hour: "2-digit",
      hourCycle: "h23",
      day: "numeric",
    });
    for (let day = 0; day < 365; day++) {
      const seconds = secondsAtWall(at("2026-01-01", 24 * day + 22), year);
      const parts = format.formatToParts(new Date((Date.parse("2025-12-31T23:00:00Z") / 1000 + seconds) * 1000));
      expect(parts.find(({ type }) => type === "hour")?.value).toBe("22");
      const date = dateOf(daysOf("2026-01-01")! + day);
      expect(Number(parts.find(({ type }) => type === "day")?.value)).toBe(Number(date.slice(8)));
    }
  });
});

describe("a shift", () => {
  const week = { begins: at("2026-03-23", 0), changes: [] };

  it("across midnight belongs to the day on which it starts", () => {
    const nights = occurrences({ days: ["mon", "fri"], start: 22 * hour, end: 6 * hour }, week, 7 * 24 * hour);
    expect(nights.map(({ from, until }) => [from / hour, until / hour])).toEqual([
      [22, 30],
      [118, 126],
    ]);
  });

  it("is cut at the start and the end of the run", () => {
    const found = occurrences({ start: 22 * hour, end: 6 * hour }, { ...week, begins: at("2026-03-23", 2) }, 21 * hour);
    expect(found.map(({ from, until }) => [from / hour, until / hour])).toEqual([
      [0, 4],
      [20, 21],
    ]);
  });

  it("joins the shift before it without a gap; `between` gives the rest of the run", () => {
    const shifts = [
      ...occurrences({ start: 6 * hour, end: 14 * hour }, week, 48 * hour),
      ...occurrences({ start: 14 * hour, end: 22 * hour }, week, 48 * hour),
    ];
    expect(united(shifts).map(({ from, until }) => [from / hour, until / hour])).toEqual([
      [6, 22],
      [30, 46],
    ]);
    expect(between(united(shifts), 48 * hour).map(({ from, until }) => [from / hour, until / hour])).toEqual([
      [0, 6],
      [22, 30],
      [46, 48],
    ]);
  });
});

describe("stretches in order", () => {
  const stretch = fc
    .tuple(fc.nat(60), fc.integer({ min: 1, max: 9 }))
    .map(([from, time]) => ({ from, until: from + time }));
  const stretches = fc.array(stretch, { maxLength: 8 }).map(united);

  it("are found by bisection as by looking at each", () => {
    fc.assert(
      fc.property(stretches, stretch, (all, one) => {
        expect(isWithin(one.from, all)).toBe(all.some(({ from, until }) => from <= one.from && one.from < until));
        expect(overlapsOne(one, all)).toBe(all.some(({ from, until }) => from < one.until && until > one.from));
      }),
    );
  });
});
