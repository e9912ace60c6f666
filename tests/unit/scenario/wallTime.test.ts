// Holds the wall clock of a run to the platform's time zones (the time zone database of IANA).
import { describe, expect, it } from "vitest";
import { spokenWallTime, wallAt, wallClockOf, type WallTimes } from "#scenario/resolving/wallTime.ts";

const berlin = new Intl.DateTimeFormat("en-CA", {
  timeZone: "Europe/Berlin",
  dateStyle: "short",
  timeStyle: "medium",
  hourCycle: "h23",
});

/**
 * Wall time in Berlin, in seconds. Directive 2000/84/EC sets the changes to 01:00 UTC on the last Sundays of March and October [M].
 */
function inBerlin(utcSeconds: number): number {
  const [date = "", time = ""] = berlin.format(new Date(utcSeconds * 1000)).split(", ");
  return Date.parse(`${date}T${time}Z`) / 1000;
}

const year: WallTimes = {
  begins: "2026-01-01 00:00",
  clockChanges: [
    { on: "2026-10-25", at: "03:00", by: -3600 },
    { on: "2026-03-29", at: "02:00", by: 3600 },
  ],
};
const beginsUtc = Date.parse("2025-12-31T23:00:00Z") / 1000;

describe("the wall clock of a run", () => {
  it("agrees with the time in Berlin at every hour of a year and around both changes", () => {
    const clock = wallClockOf(year);
    const around = [Date.parse("2026-03-29T01:00:00Z"), Date.parse("2026-10-25T01:00:00Z")].flatMap((at) =>
      [-3601, -3600, -1, 0, 1, 3599, 3600].map((by) => at / 1000 + by - beginsUtc),
    );
    const hours = Array.from({ length: 365 * 24 }, (_, i) => i * 3600 + 77);
    for (const seconds of [...hours, ...around]) {
      expect([seconds, wallAt(seconds, clock)]).toEqual([seconds, inBerlin(beginsUtc + seconds)]);
    }
  });

  it("ignores a change before the run", () => {
    const late = { ...year, begins: "2026-04-01 06:30" };
    expect(spokenWallTime(3661, late)).toBe("wed 2026-04-01 07:31:01");
  });
});
