// The commands match and record as a user calls them.
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { cellText } from "../support/cellScenario.ts";
import { newFolder, projectFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
const inFolder = (...names: readonly string[]) => path.join(folder, ...names);
const call = (...args: readonly string[]) => callHere(args, { folder });

type Row = Readonly<Record<string, string>>;
const read = (...names: readonly string[]) => readFileSync(inFolder(...names), "utf8");
const rowsOf = (...names: readonly string[]): readonly Row[] =>
  parse(read(...names), { columns: true }) as readonly Row[];

function write(name: string, text: string): string {
  writeFileSync(inFolder(name), text);
  return name;
}

write("cell.yaml", cellText(2, "crew: { operators: 1 }\n").replace("8 s,", "{ normal: [8 s, 0.2 s] },"));
await call(
  "run",
  "cell.yaml",
  "--events",
  "--seed",
  "floor",
  "--length",
  "2 h",
  "--replications",
  "1",
  "--out",
  "floor",
);
const log = "floor/events.csv";

describe("a log of the model itself", () => {
  it("agrees: the verdict comes first, and all is on one screen", async () => {
    const { code, output, errors } = await call("match", "cell.yaml", log);
    expect(code).toBe(0);
    expect(output).toMatch(/^The model agrees with the log within 5 %: [\d.]+ shots an hour in the\n? *model/u);
    expect(output).toContain("Step times and logic are both right within these margins.");
    expect(output.split("\n").length).toBeLessThanOrEqual(40);
    expect(Math.max(...output.split("\n").map(({ length }) => length))).toBeLessThanOrEqual(80);
    expect(errors).toContain("match.html and match.csv are in reports/cell-match");
    const rows = rowsOf("reports/cell-match/match.csv");
    expect(rows[0]).toMatchObject({ measure: "throughput", verdict: "agrees", traced_difference: "0" });
    expect(rows.find(({ measure, name }) => measure === "step" && name === "cool")!["verdict"]).toBe("agrees");
    expect(rows.some(({ measure }) => measure === "wait")).toBe(true);
    const page = read("reports/cell-match/match.html");
    expect(page).toContain("The model agrees with the log within 5 %");
    expect(page).toMatch(/<svg/u);
    expect(page).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/u);
  });

  it("is the same in every call, and as JSON", async () => {
    const { code, output } = await call("match", "cell.yaml", log, "--json", "--out", "again");
    expect(code).toBe(0);
    const { command, tables } = JSON.parse(output) as { command: string; tables: { match: readonly object[] } };
    expect(command).toBe("match");
    expect(tables.match[0]).toMatchObject({ measure: "throughput", verdict: "agrees" });
    expect(read("again/match.csv")).toBe(read("reports/cell-match/match.csv"));
  });
});

describe("a wrong model", () => {
  it("with other step times is told so, with the step and what to do", async () => {
    const { code, output } = await call(
      "match",
      "cell.yaml",
      log,
      "--set",
      "stations.*.steps.cool=+1.5 s",
      "--out",
      "times",
    );
    expect(code).toBe(1);
    expect(output).toMatch(/^The model does not agree with the log within 5 %/u);
    expect(output.replaceAll(/\s+/gu, " ")).toContain(
      "The step times of the model are wrong, not its logic: cool, station",
    );
    expect(output).toContain("blowcell fit LOG --into FILE");
  });

  it("with less stations names those of the log that it lacks", async () => {
    const { code, errors } = await call("match", "cell.yaml", log, "--set", "stations.count=1", "--out", "fewer");
    expect(code).not.toBe(70);
    expect(errors).toContain("Not in the model, and left out: station 2. [log-unmatched]");
  });
});

describe("a log that decides nothing or cannot be used", () => {
  const header = "time_s,station,step\n";
  const few = Array.from({ length: 4 }, (_, i) => [`${i * 14},station 1,drop`, `${i * 14 + 2},station 1,close`]).flat();
  const refused = async (name: string, text: string, ...more: readonly string[]) => {
    const { code, errors } = await call("match", "cell.yaml", write(name, text), "--out", "refused", ...more);
    expect(code).toBe(2);
    return errors;
  };

  it("is undecided with few shots", async () => {
    const { code, output } = await call(
      "match",
      "cell.yaml",
      write("few.csv", `${header}${few.join("\n")}\n`),
      "--out",
      "few",
    );
    expect(code).toBe(3);
    expect(output).toMatch(/^Undecided: the log has too few shots to compare, 4 shots in/u);
    expect(output).toContain("Next: log 11 shots or more of each station.");
  });

  it("is undecided where its times vary too much, and says how much log is needed", async () => {
    const rows = Array.from({ length: 30 }, (_, i) => {
      const start = i * 13 + (i % 5 === 0 ? 5 : 0) + (i > 15 ? 8 : 0);
      return [`${start},station 1,drop`, `${start + 2},station 1,close`];
    });
    const { code, output } = await call(
      "match",
      "cell.yaml",
      write("vague.csv", `${header}${rows.flat().join("\n")}\n`),
      "--out",
      "vague",
      "--set",
      "stations.count=1",
    );
    expect([code, output.split(":")[0]]).toEqual([3, "Undecided"]);
    expect(output).toMatch(/Next: log /u);
  });

  it("blames nothing where it has whole cycles only", async () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${13 * (i + 1)},station 1,${i % 2 === 0 ? 12.8 : 13.2}`);
    const name = write("cycles.csv", `time_s,station,cycle time\n${rows.join("\n")}\n`);
    const { output } = await call("match", "cell.yaml", name, "--out", "cycles", "--set", "stations.count=1");
    const words = output.replaceAll(/\s+/gu, " ");
    expect(words).toContain("No step of the model has times in the log");
    expect(words).toContain("Step times and logic cannot yet be separated: the log lacks most steps.");
    expect(words).not.toContain("logic is wrong");
  });

  it("is refused with place, names and remedy", async () => {
    expect(await refused("empty.csv", "")).toContain("[log-empty]");
    expect(await refused("untimed.csv", "station,step,duration_s\nstation 1,drop,1.8\n")).toContain("[log-times]");
    const strange = await refused("strange.csv", `${header}0,M1,eject\n9,M1,fill\n`);
    expect(strange).toContain("strange.csv:1:1: error: The log has no step of a station of the model. It has M1.");
    expect(strange).toContain("a station of station 1, station 2 and its steps");
    expect(await refused("quote.csv", `${header}0,"station 1,drop\n`)).toContain("[log-broken]");
    const backward = read(log).trimEnd().split("\n");
    const newestFirst = [backward[0], ...backward.slice(1).toReversed()].join("\n");
    expect(await refused("backward.csv", `${newestFirst}\n`)).toContain("Sort the rows by time, the oldest first.");
    expect(await refused("header.csv", header)).toContain("The log has a header and no rows. [log-empty]");
    expect(await refused("columns.csv", "a,b\n1,2\n")).toContain("[log-columns]");
  });

  it("names wrong options", async () => {
    expect(await refused("x.csv", header, "--margin", "60 %")).toContain("[margin-range]");
    expect(await refused("x.csv", header, "--margin", "wide")).toContain("[margin-range]");
    expect(await refused("x.csv", header, "--rename", "M1")).toContain("[rename-form]");
    expect(await refused("x.csv", header, "--rename", "M1=statoin 1")).toContain("[rename-unknown]");
    expect(await refused("x.csv", header, "--rename", "M1=station 1")).toContain("[rename-unused]");
    expect(await refused("x.csv", header, "--zone", "Nowhere/None")).toContain("[log-zone]");
    expect((await call("match", "cell.yaml", "nowhere.csv")).code).toBe(2);
    expect((await call("match", log, "cell.yaml")).errors).toContain(
      `${log}:1:1: error: A log is no scenario. [log-first]`,
    );
    expect((await call("match", "cell.yaml", "cell.yaml", "--out", "refused")).errors).toContain("[log-scenario]");
  });

  it("takes names of the floor with --rename", async () => {
    const renamed = read(log).replaceAll("station 1", "M1").replaceAll(",close,", ",schliessen,");
    const { code, output } = await call(
      "match",
      "cell.yaml",
      write("renamed.csv", renamed),
      "--out",
      "renamed",
      "--rename",
      "M1=station 1",
      "--rename",
      "schliessen=close",
    );
    expect(code).toBe(0);
    expect(output).toContain("Step times and logic are both right within these margins.");
  });
});

describe("the shipped sample logs", () => {
  it("have no stops: a pin that goes down is a step", async () => {
    const { output } = await call(
      "fit",
      path.join(projectFolder, "scenarios/logs/invented-two-molds.csv"),
      "--out",
      "pins",
    );
    expect(output).toMatch(/^24 steps are fitted from 2,549 rows; 11 rows are left/u);
    const close = rowsOf("pins/fit.csv").find(({ step }) => step === "close");
    expect(close).toMatchObject({ scenario_value: "0.8 s", reason: "a timer: the values are equal" });
  });

  const scenarios = path.join(projectFolder, "scenarios");
  const match = (name: string) =>
    call(
      "match",
      path.join(scenarios, `${name}.yaml`),
      path.join(scenarios, `logs/invented-${name}.csv`),
      "--out",
      name,
    );

  it("of the model as it is agrees, and every planted fault is named", async () => {
    const { code, errors } = await match("two-molds");
    expect(code).toBe(0);
    for (const fault of [
      "1 row: empty time",
      "1 row: duplicate row",
      "1 row: time goes back",
      "4 rows: gap in the log",
    ])
      expect(errors).toContain(fault);
  });

  it("with more cooling does not agree, because of the step times", async () => {
    const { code, output, errors } = await match("two-station");
    expect(code).toBe(1);
    expect(output).toContain("The step times of the model are wrong, not its logic: cool");
    for (const fault of [
      "1 row: empty duration",
      "1 row: duration not above 0",
      "1 row: unreadable duration",
      "2 rows: duplicate row",
    ])
      expect(errors).toContain(fault);
  });
});

describe("the form for a stopwatch", () => {
  it("says what to time, and is never overwritten unasked", async () => {
    const { code, output } = await call("record", "cell.yaml", "--out", "form");
    expect(code).toBe(0);
    expect(output).toContain("Time 10 cycles of each station");
    expect(output).toMatch(/A wait: nothing of it moves/u);
    expect(output.split("\n").length).toBeLessThanOrEqual(40);
    expect(read("form/record.html")).toContain("<td>cool</td>");
    expect((await call("record", "cell.yaml", "--out", "form")).errors).toContain("[record-exists]");
    expect((await call("record", "cell.yaml", "--out", "form", "--replace")).code).toBe(0);
    expect((await call("record", "form/record.csv")).errors).toContain("[record-reads]");
  });

  it("is read back by fit and match once it is filled in", async () => {
    // Readings of the model: each row of the form takes the next state of that name of its station.
    const events = rowsOf(log);
    const rows = rowsOf("form/record.csv");
    const filled = ["station 1", "station 2"].flatMap((station) => {
      const states = events.filter((event) => event["resource"] === station && Number(event["time_s"]) > 1200);
      const first = states.findIndex(({ step }) => step === "shift to port");
      let place = first;
      return rows
        .filter((row) => row["station"] === station)
        .map((row) => {
          const event = states[place]!;
          const isNow = row["step"] === event["step"] || row["step"] === event["state"];
          if (isNow) place += 1;
          return [
            row["cycle"],
            station,
            row["step"],
            row["cause"],
            isNow ? Number(event["time_s"]).toFixed(1) : "",
          ].join(",");
        });
    });
    expect(filled.filter((line) => !line.endsWith(",")).length).toBeGreaterThan(140);
    write("filled.csv", ["cycle,station,step,cause,time_s", ...filled, ""].join("\n"));
    const { code, output } = await call("match", "cell.yaml", "filled.csv", "--out", "filled");
    expect([0, 3]).toContain(code);
    expect(output).toMatch(/20 shots|22 shots/u);
    const fit = await call("fit", "filled.csv", "--out", "filled-fit");
    expect(fit.code).toBe(0);
    expect(fit.output).toMatch(/station 1 +cool +10 /u);
  });
});
