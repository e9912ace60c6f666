// Rows of logs as plants write them: columns, numbers, times, cleaning.
import { describe, expect, it } from "vitest";
import { logReader, type LogSummary } from "#analysis/log/logReader.ts";
import { kindOf, type StepRecord } from "#analysis/log/logRecord.ts";
import { zoneNamed } from "#cli/log/zonedTime.ts";

function read(
  text: string,
  options: {
    readonly zone?: string;
    readonly columns?: readonly string[];
    readonly stops?: readonly string[];
    readonly steps?: readonly string[];
  } = {},
) {
  const records: StepRecord[] = [];
  const delimiter = text.split("\n", 1)[0]!.includes(";") ? ";" : ",";
  const zone = options.zone === undefined ? undefined : zoneNamed(options.zone);
  const reader = logReader((record) => records.push(record), { ...options, delimiter, zone });
  text.split("\n").forEach((row, i) => reader.row(row.split(delimiter), i + 1));
  return { records, ...reader.end() };
}

const seconds = ({ records }: { readonly records: readonly StepRecord[] }) =>
  records.map((record) => Number(record.seconds.toFixed(6)));
const problemsOf = ({ problems }: LogSummary) =>
  problems.map(({ problem, count, line }) => `${problem} ${count} ${line}`);

describe("durations", () => {
  it.each([
    ["in seconds", "station,step,duration_s\nA,cool,7.5\nA,cool,8", [7.5, 8]],
    ["in milliseconds", "station,step,duration [ms]\nA,cool,7500\nA,cool,8000", [7.5, 8]],
    ["with units in cells", "station,step,duration\nA,cool,7.5 s\nA,cool,2 min", [7.5, 120]],
    ["with a decimal comma", "Maschine;Schritt;Zykluszeit [s]\nA;cool;7,5\nA;cool;1.008,25", [7.5, 1008.25]],
    ["with a decimal comma before three digits", "Maschine;Schritt;Dauer_s\nA;cool;7,500\nA;cool;8,125", [7.5, 8.125]],
    ["as h:mm:ss", "station,step,duration\nA,cool,0:00:07.5\nA,cool,1:02:03", [7.5, 3723]],
    ["as mm:ss", "station,step,duration\nA,cool,2:03\nA,cool,0:07", [123, 7]],
    ["in a column named time that does not rise", "station,step,time\nA,cool,8\nA,cool,7.5", [8, 7.5]],
  ])("are read %s", (_, text, expected) => {
    expect(seconds(read(text))).toEqual(expected);
  });

  it("are mapped by name and by number", () => {
    const text = "where,what,how long\nA,cool,7.5";
    const byName = ["duration=how long", "station=where", "step=what"];
    expect(read(text, { columns: byName }).records[0]).toMatchObject({ station: "A", step: "cool", seconds: 7.5 });
    expect(read(text, { columns: ["duration=3", "step=2"] }).records[0]).toMatchObject({ step: "cool", seconds: 7.5 });
  });
});

describe("times", () => {
  const states = (...times: readonly string[]) =>
    `time,station,state\n${times.map((time, i) => `${time},A,s${i % 2}`).join("\n")}`;

  it.each([
    ["ISO 8601 with offsets", states("2026-03-01T10:00:00Z", "2026-03-01T11:00:07.5+01:00"), [7.5]],
    ["ISO 8601 without offset", states("2026-03-01 10:00:00", "2026-03-01 10:00:07.5"), [7.5]],
    ["epoch seconds", states("1772359200", "1772359207.5"), [7.5]],
    ["epoch milliseconds", states("1772359200000", "1772359207500"), [7.5]],
    ["German dates", states("01.03.2026 10:00:00", "01.03.2026 10:00:07"), [7]],
    ["dates with the month first and a half day", states("3/1/2026 11:59:58 AM", "3/1/2026 12:00:05 PM"), [7]],
    ["a spreadsheet's days", states("46082.4166666667", "46082.4167534722"), [7.5]],
    ["times of day over midnight", states("23:59:55", "00:00:02"), [7]],
    ["plain seconds", "time_s,station,state\n0,A,x\n7.5,A,y", [7.5]],
  ])("are read as %s", (_, text, expected) => {
    expect(seconds(read(text)).map((value) => Math.round(value * 100) / 100)).toEqual(expected);
  });

  // In Europe the clock goes from 03:00 back to 02:00 on 2026-10-25 and from 02:00 to 03:00 on 2026-03-29 (Directive 2000/84/EC) [M].
  it("continue over the hour that comes twice", () => {
    const text = states("2026-10-25 02:30:00", "2026-10-25 02:50:00", "2026-10-25 02:10:00", "2026-10-25 03:10:00");
    const log = read(text, { zone: "Europe/Berlin" });
    expect(seconds(log)).toEqual([1200, 1200, 3600]);
    expect(problemsOf(log)).toContain("local hour that comes twice 3 2");
  });

  it("continue over the hour that is skipped", () => {
    const log = read(states("2026-03-29 01:59:00", "2026-03-29 03:01:00"), { zone: "Europe/Berlin" });
    expect(seconds(log)).toEqual([120]);
    const never = read(states("2026-03-29 01:59:00", "2026-03-29 02:30:00"), { zone: "Europe/Berlin" });
    expect(problemsOf(never)).toContain("local time that does not exist 1 3");
    expect(seconds(never)).toEqual([31 * 60]);
  });
});

describe("rows of events", () => {
  it("give states until the next row, waits and stops apart", () => {
    const log = read("time_s,station,state\n0,A,cool\n7,A,waiting\n9,A,stopped\n20,A,cool\n27,A,open");
    expect(log.records.map(({ step, kind, seconds: time }) => [step, kind, time])).toEqual([
      ["cool", "step", 7],
      ["waiting", "wait", 2],
      ["stopped", "stop", 11],
      ["cool", "step", 7],
    ]);
    expect(problemsOf(log)).toEqual(["state without an end 1 6"]);
  });

  it("pair starts with ends", () => {
    const log = read(
      "time_s,station,event,step\n0,A,start,cool\n1,A,start,open\n3,A,end,open\n7,A,end,cool\n8,A,end,vent\n9,A,start,cool\n9.5,A,start,cool",
    );
    expect(log.records.map(({ step, seconds: time }) => [step, time])).toEqual([
      ["open", 2],
      ["cool", 7],
    ]);
    expect(problemsOf(log)).toEqual([
      "end without a start 1 6",
      "start without an end 1 7",
      "state without an end 1 8",
    ]);
  });

  it("leave out a state during which the log stood still", () => {
    const rows = Array.from({ length: 12 }, (_, i) => `${i * 7},A,${i % 2 === 0 ? "cool" : "open"}`);
    const log = read(`time_s,station,state\n${rows.join("\n")}\n40000,A,cool`);
    expect(problemsOf(log)).toContain("gap in the log 1 13");
  });
});

describe("names of stops", () => {
  it("may be given by the call", () => {
    const log = read("time_s,station,state\n0,A,cool\n7,A,Heater band\n9,A,cool", { stops: ["heater band"] });
    expect(log.records.map(({ kind }) => kind)).toEqual(["step", "stop"]);
  });
});

describe("names of steps, stops and waits", () => {
  it.each([
    ["pin down", "step"],
    ["down", "stop"],
    ["Machine down", "stop"],
    ["downtime", "stop"],
    ["shift to neutral", "step"],
    ["neutral", "wait"],
    ["in neutral", "wait"],
    ["hold pressure", "step"],
    ["holding a full shot", "wait"],
    ["awaiting melt", "wait"],
    ["Störung Heizband", "stop"],
  ])("%s is a %s", (name, kind) => {
    expect(kindOf(name)).toBe(kind);
  });

  it("are steps where the call says so", () => {
    const text = "time_s,station,state\n0,A,Waiting dwell\n7,A,cool\n9,A,cool";
    expect(read(text).records[0]).toMatchObject({ kind: "wait" });
    expect(read(text, { steps: [" waiting dwell"] }).records[0]).toMatchObject({ kind: "step" });
  });
});

describe("times since 1970", () => {
  it("give durations of whole microseconds", () => {
    const log = read(
      "time,station,state\n2026-03-02T06:00:00.000,A,a\n2026-03-02T06:00:00.800,A,b\n2026-03-02T06:00:01.100,A,c",
    );
    expect(log.records.map((record) => record.seconds)).toEqual([0.8, 0.3]);
    const rows = read("start,end,step\n2026-03-02T06:00:00.100,2026-03-02T06:00:00.400,a");
    expect(rows.records.map((record) => record.seconds)).toEqual([0.3]);
  });
});

describe("a log without a header", () => {
  it("keeps its first row", () => {
    const log = read("A,cool,7.5\nA,cool,8", { columns: ["duration=3", "step=2", "station=1"] });
    expect(seconds(log)).toEqual([7.5, 8]);
  });
});

describe("cleaning", () => {
  it("counts everything that it leaves out, with the first line", () => {
    const text = `time,station,step,duration_s
2026-01-01 00:00:10,A,cool,7.5
2026-01-01 00:00:10,A,cool,7.5
2026-01-01 00:00:30,A,cool,
2026-01-01 00:00:40,A,cool,-1
2026-01-01 00:00:50,A,,7
2026-01-01 00:01:00,A,cool,seven
soon,A,cool,7
,A,cool,7
2026-01-01 00:01:03,A,cool,7.5
2026-01-01 00:01:06,A,cool,7.5`;
    const log = read(text);
    expect(problemsOf(log)).toEqual([
      "duplicate row 1 3",
      "empty duration 1 4",
      "duration not above 0 1 5",
      "empty step 1 6",
      "unreadable duration 1 7",
      "unreadable time 1 8",
      "empty time 1 9",
      "overlap with the row before 1 11",
    ]);
    expect(log.rows).toBe(10);
    expect(log.records).toHaveLength(3);
  });

  it("never takes a decimal mark for one of thousands, nor what is not finite", () => {
    const log = read("station;step;duration_s\nA;cool;7.5\nA;cool;7,5\nA;cool;1,007.5\nA;cool;1e400");
    expect(seconds(log)).toEqual([7.5, 1007.5]);
    expect(problemsOf(log)).toEqual(["unreadable duration 2 3"]);
  });

  it("names times that go back, apart from overlaps", () => {
    const log = read("start_s,station,step,duration_s\n100,A,cool,7\n90,A,cool,7\n95,A,cool,7\n110,A,cool,7");
    expect(problemsOf(log)).toEqual(["earlier than the row before 1 3", "overlap with the row before 1 4"]);
    expect(log.issues).toEqual([]);
  });

  it.each(["time_s,station,state", "start_s,station,step,duration_s"])("refuses the newest row first: %s", (header) => {
    const rows = Array.from({ length: 20 }, (_, i) => `${500 - 10 * i},A,s${i % 2},7`);
    expect(read([header, ...rows].join("\n")).issues.map(({ code }) => code)).toEqual(["log-order"]);
  });

  it("keeps equal rows of a log without times", () => {
    expect(read("station,step,duration_s\nA,cool,7.5\nA,cool,7.5").records).toHaveLength(2);
  });

  it.each([
    ["no useful columns", "a,b\n1,2", "log-columns"],
    ["nothing", "", "log-columns"],
  ])("refuses %s", (_, text, code) => {
    expect(read(text).issues.map((issue) => issue.code)).toEqual([code]);
  });

  it("refuses a mapping to a column that is not there", () => {
    const { issues } = read("a,duration\n1,2", { columns: ["step=aa", "nonsense"] });
    expect(issues.map(({ code, remedy }) => [code, remedy])).toEqual([
      ["log-column-option", "Did you mean `step=a`?"],
      ["log-column-option", 'Write `--column "duration=Cycle time"`.'],
    ]);
  });
});
