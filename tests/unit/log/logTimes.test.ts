// Instants as logs write them, and local times where the clock changes; all values by hand.
import { describe, expect, it } from "vitest";
import { between, timeFormat, type Offset, type Zone } from "#analysis/log/logTimes.ts";

type Hints = Partial<Parameters<typeof timeFormat>[1]>;

const format = (samples: readonly string[], hints: Hints = {}) => timeFormat(samples, { mark: ".", ...hints });
/** The first sample decides the format of all. */
const read = (texts: readonly string[], hints?: Hints) => {
  const found = format(texts, hints)!;
  return texts.map((text) => found.read(text));
};
const secondsOf = (texts: readonly string[], hints?: Hints) => read(texts, hints).map((each) => each?.seconds);

/** 2026-03-01 is 20,513 days after 1970-01-01: 56 years of 365 days, 14 leap days from 1972 to 2024, 31 + 28 days. */
const march = (56 * 365 + 14 + 59) * 86_400;
const clock = (hours: number, minutes = 0, seconds = 0) => hours * 3600 + minutes * 60 + seconds;

/** An hour east of Greenwich, two in summer from `march` + 2 h to the double hour. */
const zone = (offset: (localSeconds: number) => Offset): Zone => ({ offset, offsetAt: () => -3600 });
const east = zone(() => ({ seconds: -3600 }));

describe("dates", () => {
  it.each<[string, number]>([
    ["2026-03-01", march],
    ["2026-3-1T10:00", march + clock(10)],
    ["2026-03-01, 10:00:07.5", march + clock(10, 0, 7.5)],
    ["01.03.2026 10:00:07,5", march + clock(10, 0, 7.5)],
    ["3/1/2026 1:02 PM", march + clock(13, 2)],
    ["3/1/2026 12:30 am", march + clock(0, 30)],
    ["3/1/2026 12:30 PM", march + clock(12, 30)],
    ["2026-03-01T10:00:00Z", march + clock(10)],
    ["2026-03-01T10:00:00+05:30", march + clock(4, 30)],
    ["2026-03-01T10:00:00-0330", march + clock(13, 30)],
    ["2026-03-01 10:00 +02", march + clock(8)],
    ["2026-03-01 23:59:60", march + 86_400],
  ])("%s is read", (text, seconds) => {
    expect(secondsOf([text])).toEqual([seconds]);
  });

  it("that do not exist, or hours that do not, are not read", () => {
    const good = "2026-03-01 10:00";
    const bad = ["2026-02-30 10:00", "2026-13-01 10:00", "2026-03-01 24:00", "2026-03-01 10:60", "2026-03-01 10:00:61", "2026-03-01 soon", "soon"]; // prettier-ignore
    expect(secondsOf([good, ...bad])).toEqual([march + clock(10), ...bad.map(() => undefined)]);
    expect(format(["soon", "later"])).toBeUndefined();
  });

  it("with slashes have the day first where any first number is above 12", () => {
    expect(format(["3/1/2026"])?.words).toBe("dates with the month first, as no first number is above 12");
    expect(secondsOf(["1/3/2026", "12/3/2026"])[0]).toBe((56 * 365 + 14 + 2) * 86_400);
    expect(format(["1/3/2026", "13/3/2026"])?.words).toBe("dates with the day first");
    expect(secondsOf(["1/3/2026", "13/3/2026"])).toEqual([march, march + 12 * 86_400]);
    expect(format(["2026-03-01 10:00"])?.words).toBe("dates and times");
  });

  it("have the hour of their own clock", () => {
    const texts = ["2026-03-01T23:59:59+05:30", "2026-03-01 00:00", "2026-03-01T10:00Z"];
    expect(read(texts).map((each) => each?.hour)).toEqual([23, 0, 10]);
    expect(read(texts, { zone: east }).map((each) => each?.hour)).toEqual([23, 0, 10]);
  });
});

describe("numbers as times", () => {
  it("are seconds since 1970 with the hour in UTC, or that of the zone", () => {
    const text = String(march + clock(10));
    expect(format([text])?.words).toBe("times since 1970 in s");
    expect(read([text])).toEqual([{ seconds: march + clock(10), hour: 10 }]);
    expect(read([text], { zone: east })).toEqual([{ seconds: march + clock(10), hour: 11 }]);
  });

  it("are milliseconds and microseconds by their size", () => {
    expect(format([`${march}000`])?.words).toBe("times since 1970 in ms");
    expect(secondsOf([`${march}500`, `${march}000`])[0]).toBeCloseTo(march + 0.5, 6);
    expect(format([`${march}000000`])?.words).toBe("times since 1970 in µs");
    expect(secondsOf([`${march}500000`])[0]).toBeCloseTo(march + 0.5, 6);
    // The whole range of a unit: from 1e9, below 1e10.
    const words = ["1000000000", "9999999999", "999999999", "10000000000"].map((text) => format([text])?.words);
    expect(words).toEqual(["times since 1970 in s", "times since 1970 in s", "times in s", "times in s"]);
    expect(format(["1000000000", "10000000000"])?.words).toBe("times in s");
  });

  it("have the unit of their column where they are no instants since 1970", () => {
    expect(format(["7.5"], { unit: "min" })?.words).toBe("times in min");
    expect(secondsOf(["7.5", "8"], { unit: "min" })).toEqual([450, 480]);
    expect(format([`${march}000`], { unit: "ms" })?.words).toBe("times since 1970 in ms");
    expect(format(["2000000000"], { unit: "ms" })?.words).toBe("times in ms");
    expect(format(["999999999"], { unit: "s" })?.words).toBe("times in s");
    expect(format(["1000000000"], { unit: "s" })?.words).toBe("times since 1970 in s");
    expect(secondsOf(["7.5"], { unit: "parts" })).toEqual([7.5]);
  });

  it("are a spreadsheet's days from the year 2000 to 2100 where any is not whole", () => {
    // 2026-03-01 is day 46,082: 25,569 days from 1899-12-30 to 1970-01-01, and 20,513 more.
    expect(format(["46082.5", "46083"])?.words).toBe("dates as a spreadsheet counts them");
    expect(read(["46082.5"])).toEqual([{ seconds: march + clock(12), hour: 12 }]);
    expect(secondsOf(["46082.5"], { zone: east })).toEqual([march + clock(11)]);
    // A spreadsheet keeps a microsecond or less: 1 / 3 of a day in nine digits is 8 h to 0.1 ms.
    expect(secondsOf(["46082.3333333333"])[0]! - march - clock(8)).toBeCloseTo(0, 4);
    // A slip among them, 25,568.75, is 1969-12-31 18:00, six hours before 1970.
    expect(format(["46082.5"])?.read("25568.75")).toEqual({ seconds: -clock(6), hour: 18 });
    expect(format(["46082", "46083"])?.words).toBe("times in s");
    const words = ["36526.5", "73050.5", "36525.5", "73051.5"].map((text) => format([text])?.words);
    expect(words.map((each) => each === "times in s")).toEqual([false, false, true, true]);
  });

  it("are read although one of the first cells is not", () => {
    expect(secondsOf(["7.5", "soon", "8"])).toEqual([7.5, undefined, 8]);
    expect(secondsOf(["10:00", "soon"])).toEqual([clock(10), undefined]);
    expect(secondsOf(["2026-03-01", "soon"])).toEqual([march, undefined]);
  });

  it("that are unreadable later are not read", () => {
    for (const sample of ["7.5", `${march}`, "46082.5"]) expect(format([sample])?.read("soon")).toBeUndefined();
  });
});

describe("times of day", () => {
  it("go on to the next day where they fall by more than half a day", () => {
    expect(secondsOf(["23:00", "01:00:07.5", "00:59", "23:30"])).toEqual([
      clock(23),
      86_400 + clock(1, 0, 7.5),
      86_400 + clock(0, 59),
      86_400 + clock(23, 30),
    ]);
    // Exactly half a day is a slip of the rows.
    expect(secondsOf(["13:00", "01:00"])).toEqual([clock(13), clock(1)]);
    expect(secondsOf(["13:00:01", "01:00"])).toEqual([clock(13, 0, 1), 86_400 + clock(1)]);
    expect(read(["1:30 pm", "2:30 PM"]).map((each) => each?.hour)).toEqual([13, 14]);
    expect(format(["10:00"])?.words).toContain("times of day");
    expect(format(["10:00"])?.read("25:00")).toBeUndefined();
  });
});

describe("a local time that comes twice", () => {
  // From 2 to 3 o'clock: first two hours east of Greenwich, then one.
  const double = zone((local) =>
    local >= march + clock(2) && local < march + clock(3)
      ? { seconds: -7200, later: -3600, clash: "twice" }
      : { seconds: local < march + clock(2) ? -7200 : -3600 },
  );
  const at = (...times: readonly string[]) =>
    read(
      times.map((time) => `2026-03-01 ${time}`),
      { zone: double },
    ).map((each) => each!.seconds - march);

  it("is the first until the rows would go back by more than ten minutes", () => {
    expect(at("02:50", "02:45", "02:40", "02:39:59", "02:45", "03:00")).toEqual([
      clock(0, 50),
      clock(0, 45),
      clock(0, 40),
      clock(1, 39, 59),
      clock(1, 45),
      clock(2),
    ]);
  });

  it("is known by its clash, and is as written without a zone", () => {
    expect(read(["2026-03-01 02:30"], { zone: double })[0]).toMatchObject({ clash: "twice", hour: 2 });
    expect(read(["2026-03-01 01:30"], { zone: double })[0]?.clash).toBeUndefined();
    expect(read(["2026-03-01 02:30"])).toEqual([{ seconds: march + clock(2, 30), hour: 2 }]);
  });
});

describe("the time between two instants", () => {
  it("is in whole microseconds", () => {
    expect(between(march + 0.1, march + 0.4)).toBe(0.3);
    expect(between(5, 3)).toBe(-2);
  });
});
