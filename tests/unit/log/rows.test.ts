// What becomes of the rows of a log: steps, waits and stops with their times, and what is wrong; all values by hand.
import { describe, expect, it } from "vitest";
import { logReader, type LogOptions } from "#analysis/log/logReader.ts";
import type { StepRecord } from "#analysis/log/logRecord.ts";

function read(rows: readonly string[], options: Partial<LogOptions> = {}) {
  const records: StepRecord[] = [];
  const reader = logReader((record) => records.push(record), { delimiter: ",", ...options });
  rows.forEach((row, i) => reader.row(row.split(","), i + 1));
  return { records, ...reader.end() };
}

const problemsOf = ({ problems }: ReturnType<typeof read>) =>
  problems.map(({ problem, count, line, value }) => [problem, count, line, value].join(" ").trim());
const many = <Item>(count: number, item: (i: number) => Item) => Array.from({ length: count }, (_, i) => item(i));

describe("rows of whole steps", () => {
  it("have the start and the hour of their time", () => {
    const { records } = read(["start,end,station,step,run", "2026-03-01 10:59:58,2026-03-01 11:00:05.5,A,cool,2"]);
    expect(records).toEqual([
      { station: "A", step: "cool", kind: "step", run: "2", seconds: 7.5, line: 2, start: expect.any(Number) as number, hour: 10 },
    ]); // prettier-ignore
  });

  it("end at a time that stands beside a duration, and begin at a start", () => {
    const ofTime = (header: string) => read([header, "100,A,cool,7"]).records.map(({ start }) => start);
    expect(ofTime("time_s,station,step,duration_s")).toEqual([93]);
    expect(ofTime("end_s,station,step,duration_s")).toEqual([93]);
    expect(ofTime("start_s,station,step,duration_s")).toEqual([100]);
    expect(read(["start_s,end_s,duration_s,step", "100,200,7,cool"]).records).toMatchObject([{ start: 100, seconds: 7 }]); // prettier-ignore
  });

  it("are a cycle of one line where the log names neither step nor station", () => {
    const [record] = read(["duration_s", "7.5"]).records;
    expect(record).toEqual({ station: "line", step: "cycle", kind: "step", run: "", seconds: 7.5, line: 2 });
    expect(read(["duration_s,state", "7.5,waiting"]).records).toMatchObject([{ step: "waiting", kind: "wait" }]);
    expect(problemsOf(read(["duration_s,state", "7.5,"]))).toEqual(["empty step 1 2"]);
  });

  it("may differ by a second of rounding, each station and run by itself", () => {
    const of = (...rows: readonly string[]) => problemsOf(read(["start_s,duration_s,station,step,run", ...rows]));
    expect(of("100,7,A,cool,1", "106,7,A,open,1")).toEqual([]);
    expect(of("100,7,A,cool,1", "105.5,7,A,open,1")).toEqual(["overlap with the row before 1 3 1.5 s"]);
    expect(of("100,7,A,cool,1", "99,7,A,open,1")).toEqual(["overlap with the row before 1 3 8 s"]);
    expect(of("100,7,A,cool,1", "98.5,7,A,open,1")).toEqual(["earlier than the row before 1 3 1.5 s"]);
    expect(of("100,7,A,cool,1", "50,7,B,open,1", "50,7,A,open,2")).toEqual([]);
  });

  it("are left out where they end before they start, or have no end", () => {
    const log = read(["start_s,end_s,step", "10,7,cool", "20,20,cool", "30,,cool", "soon,40,cool", "50,57,cool"]);
    expect(log.records.map(({ seconds }) => seconds)).toEqual([7]);
    expect(problemsOf(log)).toEqual(["ends before it starts 2 2 -3 s", "empty time 1 4", "unreadable time 1 5 soon"]);
  });
});

describe("rows of states", () => {
  it("last until the next one of their station and run", () => {
    const log = read([
      "time_s,station,state,run",
      "0,A,cool,1",
      "1,B,open,1",
      "2,A,cool,2",
      "7,A,open,1",
      "9,B,cool,1",
      "9,A,x,2",
    ]);
    expect(log.records.map(({ station, step, run, start, seconds }) => [station, step, run, start, seconds])).toEqual([
      ["A", "cool", "1", 0, 7],
      ["B", "open", "1", 1, 8],
      ["A", "cool", "2", 2, 7],
    ]);
    expect(problemsOf(log)).toEqual(["state without an end 3 5 open"]);
  });

  it("of no time are passed through, and none goes back", () => {
    const log = read(["time,state", ...[[0, "cool"], [7, "x"], [7, "open"], [5, "late"], [9, "cool"]].map(([second, state]) => `2026-03-01 10:00:0${second},${state}`)]); // prettier-ignore
    expect(log.records.map(({ step, seconds, line }) => [step, seconds, line])).toEqual([
      ["cool", 7, 2],
      ["open", 2, 4],
    ]);
    expect(problemsOf(log)).toEqual(["time goes back 1 5", "state without an end 1 6 cool"]);
  });

  it("with a cause are waits of the state, those that are stops have its name, others that of the step", () => {
    const log = read([
      "time_s,step,state,cause",
      "0,drop,delayed,no melt",
      "1,drop,,no melt",
      "2,drop,running,",
      "3,drop,stopped,",
      "4,,running,",
      "5,,,",
      "6,drop,,",
    ]);
    expect(log.records.map(({ step, kind }) => [step, kind])).toEqual([
      ["delayed", "wait"],
      ["drop", "wait"],
      ["drop", "step"],
      ["stopped", "stop"],
      ["running", "step"],
    ]);
    expect(problemsOf(log)[0]).toBe("empty step 1 7");
  });

  it("are pairs of a start and an end in English, German and digits", () => {
    const pairs = [["start", "end"], ["Begin", "stopped"], ["on", "OFF"], ["ein", "aus"], ["1", "0"], ["enter", "leave"]]; // prettier-ignore
    const rows = pairs.flatMap(([first, last], i) => [`${i * 10},cool,${first}`, `${i * 10 + 7},cool,${last}`]);
    const log = read(["time_s,step,event", ...rows]);
    expect(log.records.map(({ seconds }) => seconds)).toEqual(pairs.map(() => 7));
    // A pair that begins anew counts from there.
    const anew = read(["time_s,step,event", "0,cool,start", "3,cool,start", "7,cool,end", "8,cool,end"]);
    expect(anew.records).toMatchObject([{ start: 3, seconds: 4, line: 3 }]);
    expect(problemsOf(anew)).toEqual(["start without an end 1 2 cool", "end without a start 1 5 cool"]);
  });
});

describe("a gap in the log", () => {
  /** Five states of 7 s, and then one of so many seconds. */
  const withLast = (seconds: number, { state = "cool", before = 5, each = 7 } = {}) => {
    const rows = many(before + 1, (i) => `${i * each},${state}`);
    return problemsOf(read(["time_s,state", ...rows, `${before * each + seconds},open`])).filter((text) => text.startsWith("gap")); // prettier-ignore
  };

  it("is a state above an hour and above 20 times as long as the five or more before it", () => {
    expect(withLast(3601)).toEqual(["gap in the log 1 7 3601 s of cool"]);
    expect(withLast(3600)).toEqual([]);
    expect(withLast(3601, { before: 4 })).toEqual([]);
    // 20 × 300 s.
    expect(withLast(6000, { each: 300 })).toEqual([]);
    expect(withLast(6001, { each: 300 })).toEqual(["gap in the log 1 7 6001 s of cool"]);
  });

  it("is no stop, and no duration", () => {
    expect(withLast(9000, { state: "stopped" })).toEqual([]);
    expect(problemsOf(read(["duration_s,step", ...many(6, () => "7,cool"), "9000,cool"]))).toEqual([]);
  });

  it("does not count for the next one", () => {
    const rows = [...many(6, (i) => i * 7), 9035, 18_035].map((time) => `${time},cool`);
    expect(problemsOf(read(["time_s,state", ...rows]))[0]).toBe("gap in the log 2 7 9000 s of cool");
  });
});

describe("equal rows", () => {
  const rows = (count: number) => many(count, (i) => `${i},s${i}`);

  it("are left out within the last ten thousand at least", () => {
    const again = read(["time_s,state", ...rows(9999), "0,s0"]);
    expect(problemsOf(again)[0]).toBe("duplicate row 1 10001 0,s0");
    const [first] = problemsOf(read(["time_s,state", ...rows(15_000), "5,s5"]));
    expect(first).toBe("duplicate row 1 15002 5,s5");
    // Those of twenty thousand rows before are forgotten.
    expect(problemsOf(read(["time_s,state", ...rows(20_000), "5,s5"]))[0]).toBe("time goes back 1 20002");
  });
});

describe("equal rows in an hour that comes twice", () => {
  it("are no duplicates", () => {
    // From 2 to 3 o'clock first two hours east of Greenwich, then one.
    const isDouble = (local: number) => Math.floor(local / 3600) % 24 === 2;
    const offset = (local: number) =>
      isDouble(local) ? ({ seconds: -7200, later: -3600, clash: "twice" } as const) : { seconds: -7200 };
    const zone = { offset, offsetAt: () => -7200 };
    const times = ["02:10", "02:50", "02:05", "02:50", "02:55"];
    const log = read(["time,state", ...times.map((time, i) => `2026-03-01 ${time},s${i % 2}`)], { zone });
    expect(log.records.map(({ seconds }) => seconds)).toEqual([2400, 900, 2700, 300]);
    expect(problemsOf(read(["time,state", "2026-03-01 02:10,a", "2026-03-01 02:10,a"], { zone }))).toContain("duplicate row 1 3 2026-03-01 02:10,a"); // prettier-ignore
  });
});

describe("equal rows of a log that is written at fixed times", () => {
  it("are no duplicates in the second of two equal hours, from its first row on", () => {
    const offset = (local: number) =>
      Math.floor(local / 3600) % 24 === 2
        ? ({ seconds: -7200, later: -3600, clash: "twice" } as const)
        : { seconds: local % 86_400 < 7200 ? -7200 : -3600 };
    const times = ["01:30", "02:00", "02:30", "02:00", "02:30", "03:00"];
    const log = read(["time,state", ...times.map((time) => `2026-03-01 ${time},cool`)], {
      zone: { offset, offsetAt: () => 0 },
    });
    expect(log.records.map(({ seconds }) => seconds)).toEqual([1800, 1800, 1800, 1800, 1800]);
  });

  it("are no duplicates on the next day, where the log has times of day alone", () => {
    const day = ["06:00,cool", "14:00,open", "22:00,cool", "23:00,open"];
    const log = read(["time,state", ...day, ...day, "23:00,open"]);
    expect(log.records.map(({ seconds }) => seconds / 3600)).toEqual([8, 8, 1, 7, 8, 8, 1]);
    expect(problemsOf(log)).toContain("duplicate row 1 10 23:00,open");
  });
});

describe("the order of rows", () => {
  /** So many rows that go back among so many others. */
  const codes = (back: number, others: number) => {
    const rows = [...many(others, (i) => `${100 + i},7`), ...many(back, (i) => `${50 - 2 * i},7`)];
    return read(["start_s,duration_s", ...rows]).issues.map(({ code, message }) => `${code}: ${message}`);
  };

  it("is wrong where more than five and more than a tenth go back", () => {
    // The last row of those that rise is the one before the first that falls.
    expect(codes(6, 53)).toEqual(["log-order: In 6 of 59 rows time goes back."]);
    expect([codes(6, 54), codes(5, 20)]).toEqual([[], []]);
  });
});

describe("the first rows", () => {
  it("decide what the columns hold, up to 200 of them", () => {
    // A number that falls makes durations of a column of times; in row 200 it still does, behind it no more.
    const fallsAt = (row: number) =>
      read(["time_s,step", ...many(210, (i) => `${i + 1 === row ? 0.5 : i},cool`)]).words[0];
    expect(fallsAt(200)).toContain("duration = ");
    expect(fallsAt(201)).toContain("time = ");
  });

  it("hold times where they rise at each station, or only fall", () => {
    const of = (...rows: readonly string[]) => read(["time_s,station,step", ...rows]).words[0];
    expect(of("8,A,cool", "7,A,cool")).toContain("duration = ");
    expect(of("8,A,cool", "7,B,cool", "9,A,cool", "8,B,cool")).toContain("time = ");
    expect(of("7,A,cool", "7,A,cool")).toContain("time = ");
    expect(of("7,A,cool", "8,A,cool", "7.5,A,cool")).toContain("duration = ");
    // The newest row first: eleven rows fall ten times.
    expect(of(...many(11, (i) => `${50 - i},A,cool`))).toContain("time = ");
    expect(of(...many(10, (i) => `${50 - i},A,cool`))).toContain("duration = ");
    // Numbers that fall so often but rise in between are durations.
    expect(of(...many(22, (i) => `${8 - (i % 2)},A,cool`))).toContain("duration = ");
    expect(of("8,A,cool", "soon,A,cool", "7,A,cool")).toContain("time = ");
    expect(of("8,A,cool", ",A,cool", "7,A,cool")).toContain("duration = ");
  });

  it("are understood in words", () => {
    expect(read(["date,time,step,duration [ms]", "2026-03-01,10:00:07,cool,7000"]).words).toEqual([
      'duration = "duration [ms]", date = "date", time = "time", step = "step"',
      "durations in ms, dates and times",
    ]);
    expect(read(["duration,step", "7,cool"]).words[1]).toBe("durations in s (no unit is given)");
    expect(read(["start_s,end_s", "1,2"]).words[1]).toBe("times in s");
    expect(read(["duration_parts", "7"]).words).toEqual([]);
  });

  it("are a header, unless one holds a plain number", () => {
    const options = { columns: ["duration=2", "step=1"] };
    expect(read(["cool,7.5", "cool,8"], options)).toMatchObject({ rows: 2 });
    expect(read(["cool,time", "cool,8"], options)).toMatchObject({ rows: 1 });
    const empty = logReader(() => undefined, { delimiter: "," }).end();
    expect(empty).toMatchObject({ rows: 0, words: [], issues: [{ code: "log-empty" }] });
    expect(read(["a,b", "1,2"])).toMatchObject({ rows: 0, records: [], issues: [{ code: "log-columns" }] });
  });

  it("take dates and clocks from two columns", () => {
    const { records } = read(["date,time,state", "2026-03-01,23:59:58,cool", "2026-03-02,00:00:05,open"]);
    expect(records).toMatchObject([{ seconds: 7, hour: 23 }]);
  });
});

describe("names that the call gives", () => {
  it("are stops and steps in any case, without blanks at their ends", () => {
    const rows = ["time_s,state", "0,Heater Band", "5,Waiting dwell", "9,cool"];
    const { records } = read(rows, { stops: [" heater band "], steps: ["WAITING DWELL"] });
    expect(records.map(({ kind }) => kind)).toEqual(["stop", "step"]);
  });
});
