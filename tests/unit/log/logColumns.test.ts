// What each column of a log holds, by its name or as the call says.
import { describe, expect, it } from "vitest";
import { logColumns } from "#analysis/log/logColumns.ts";
import { kindOf, leftOut, problemCounter } from "#analysis/log/logRecord.ts";

const rolesOf = (header: string, mapped?: readonly string[]) => {
  const { columns, issues } = logColumns(header.split(";"), mapped);
  return [Object.entries(columns).map(([role, { index }]) => `${role} ${index}`).toSorted(), issues.map(({ code }) => code)]; // prettier-ignore
};

describe("the columns of a log", () => {
  it.each<[string, readonly string[]]>([
    ["Maschine;Schritt;Zykluszeit [s]", ["duration 2", "station 0", "step 1"]],
    ["Mold Name;step;Start Time;END_TIME", ["end 3", "start 2", "step 1"]],
    ["timestamp;resource;state;cause;replication", ["cause 3", "run 4", "state 2", "station 1", "time 0"]],
    ["date;time;step;event type", ["date 0", "event 3", "step 2", "time 1"]],
    ["Datum;Zustand", ["state 1", "time 0"]],
    ["line;side;duration", ["duration 2", "station 0"]],
  ])("of %j are found", (header, roles) => {
    expect(rolesOf(header)).toEqual([roles, []]);
  });

  it("have the unit in brackets, or at the end of their name", () => {
    const of = (name: string) => logColumns([name, "step"]).columns.duration;
    expect(of("Duration [MS]")).toEqual({ index: 0, name: "Duration [MS]", unit: "ms" });
    expect(of("duration (s)")).toMatchObject({ unit: "s" });
    expect(of("duration_min")).toMatchObject({ unit: "min" });
    expect(of("duration")).toEqual({ index: 0, name: "duration" });
  });

  it("are enough with durations, starts and ends, or times and steps or states", () => {
    const enough = ["duration", "start;end", "time;step", "time;state"];
    const tooFew = ["start", "end", "time", "step", "time;station", "start;step", "a;b"];
    expect(enough.map((header) => rolesOf(header)[1])).toEqual(enough.map(() => []));
    expect(tooFew.map((header) => rolesOf(header)[1])).toEqual(tooFew.map(() => ["log-columns"]));
  });

  it("are mapped by their name in any case, by the name as it is first, and by number", () => {
    expect(rolesOf("a;B;b", ["duration=b", "step=B"])[0]).toEqual(["duration 1", "step 1"]);
    expect(rolesOf("time;what", ["duration=2", "step = what"])[0]).toEqual(["duration 1", "step 1", "time 0"]);
    expect(rolesOf("2;1", ["duration=2"])[0]).toEqual(["duration 0"]);
    expect(rolesOf("a=b;step", ["duration=a=b"])[0]).toEqual(["duration 0", "step 1"]);
    // The mapped column has no other role, and the role no other column.
    expect(rolesOf("duration;cycle time;step", ["step=duration"])[0]).toEqual(["duration 1", "step 0"]);
  });

  it("are refused where the mapping names no role or no column", () => {
    const of = (mapping: string) => {
      const [issue, ...others] = logColumns(["a", "duration"], [mapping]).issues;
      return [issue?.message, issue?.remedy, others.length];
    };
    const remedy = 'Write `--column "duration=Cycle time"`.';
    expect(of("length=a")).toEqual(['"length=a" maps no column.', remedy, 0]);
    expect(of("step=")).toEqual(['"step=" maps no column.', remedy, 0]);
    expect(of("step=3")).toEqual(['The log has no column "3".', "Write one of: a, duration.", 0]);
    expect(of("step=0")[0]).toBe('The log has no column "0".');
    expect(of("step=1e0")[0]).toBe('The log has no column "1e0".');
    expect(of("step=2x")[0]).toBe('The log has no column "2x".');
    expect(of("step=duratoin")[1]).toBe("Did you mean `step=duration`?");
  });
});

describe("the problems of a log", () => {
  it("are counted with the line and value of the first", () => {
    const problems = problemCounter();
    expect(problems.add("empty step", 4)).toBeUndefined();
    problems.add("overlap with the row before", 5, "2 s");
    problems.add("empty step", 6, "later");
    problems.add("duplicate row", 7);
    expect(problems.counts()).toEqual([
      { problem: "empty step", count: 2, line: 4, value: "" },
      { problem: "overlap with the row before", count: 1, line: 5, value: "2 s" },
      { problem: "duplicate row", count: 1, line: 7, value: "" },
    ]);
    // An overlap is kept.
    expect(leftOut(problems.counts())).toBe(3);
  });
});

describe("the kind of a name", () => {
  it("is that of the call before that of its words, a step before a stop", () => {
    expect(kindOf("Waiting", { steps: ["waiting"] })).toBe("step");
    expect(kindOf("Cool", { stops: ["cool"] })).toBe("stop");
    expect(kindOf("Cool", { stops: ["cool"], steps: ["cool"] })).toBe("step");
    expect([kindOf("blocked"), kindOf("repair"), kindOf("cool")]).toEqual(["wait", "stop", "step"]);
    // A wait for a repair is a stop.
    expect(kindOf("waiting for repair")).toBe("stop");
  });
});
