// Holds check, run and compare to what they promise on the command line: answers, files, exit codes, the same bytes again.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { tableSpecs } from "#report/tableSpecs.ts";
import { cellText } from "../support/cellScenario.ts";
import { callBlowcell, newFolder } from "./callBlowcell.ts";

const folder = newFolder();
const inFolder = (name: string) => path.join(folder, name);

function fileOf(name: string, text: string): string {
  writeFileSync(inFolder(name), text);
  return name;
}

const varied = (stations: number) => cellText(stations).replace("cool: 8 s", "cool: { triangular: [7 s, 8 s, 9 s] }");
const one = fileOf("one.yaml", varied(1));
const two = fileOf("two.yaml", varied(2));
const call = (...args: readonly string[]) => callBlowcell(args, { folder });
const bytesOf = (out: string) =>
  Object.fromEntries(
    readdirSync(inFolder(out)).map((name) => [name, readFileSync(path.join(inFolder(out), name), "latin1")]),
  );
const csvNames = (leftOut: readonly string[]) =>
  tableSpecs
    .map(({ name }) => name)
    .filter((name) => !leftOut.includes(name))
    .map((name) => `${name}.csv`)
    .toSorted();

describe("check", () => {
  it("answers on standard output, writes nothing, and leaves 0", () => {
    const before = readdirSync(folder);
    const { code, output, errors } = call("check", one, two);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    // cell.md, ideal cycle in closed form: 13.05 s and 13.05 / 2 s a shot.
    expect(output).toContain("Ideal cycle: 13.05 s a shot");
    expect(output).toContain(`Ideal cycle: ${(13.05 / 2).toFixed(2)} s a shot`);
    expect(readdirSync(folder)).toEqual(before);
  });

  it("tells of the good files and leaves the worst code where another is bad", () => {
    const { code, output, errors } = call("check", one, "onee.yaml");
    expect(code).toBe(2);
    expect(output).toContain("Ideal cycle");
    expect(errors).toContain("Did you mean one.yaml?");
  });

  it("leaves 1 for a cell that cannot work: a shot above what the screw can hold", () => {
    const { code, output, errors } = call("check", one, "--set", "delivery.shotCapacity=50 g");
    expect({ code, output }).toEqual({ code: 1, output: "" });
    expect(errors).toContain("error");
  });

  it("leaves 2 for a value that cannot be read", () => {
    expect(call("check", one, "--set", "stations.steps.cool=7,5 s").code).toBe(2);
    expect(call("check", one, "--set", "nonsense").code).toBe(2);
  });
});

describe("run", () => {
  it("writes its tables into reports/<scenario name>, and the answer to standard output", () => {
    const { code, output, errors } = call("run", two);
    expect(code).toBe(0);
    expect(output).toMatch(/^Bottleneck +cooling/m);
    expect(errors).toBe("6 CSV files are in reports/two\n");
    expect(readdirSync(inFolder("reports/two")).toSorted()).toEqual(csvNames(["comparison", "events", "shots"]));
  });

  it("writes what the data dictionary says: every column of every file, in its order", () => {
    for (const [name, bytes] of Object.entries(bytesOf("reports/two"))) {
      const spec = tableSpecs.find((each) => `${each.name}.csv` === name);
      expect(bytes.split("\r\n", 1)[0], name).toBe(spec?.columns.map((column) => column.name).join(","));
    }
  });

  it("gives the same bytes again, and with the stations listed in another order", () => {
    const named = (names: readonly string[]) =>
      varied(1).replace(/stations:\n {2}count: 1\n {2}cavities: 2\n {2}steps: (.*)\n/, (_, steps: string) =>
        ["stations:", ...names.map((name) => `  - { name: ${name}, cavities: 2, steps: ${steps} }`), ""].join("\n"),
      );
    call("run", fileOf("sides.yaml", named(["left", "right"])), "--out", "first");
    call("run", "sides.yaml", "--out", "second");
    fileOf("sides.yaml", named(["right", "left"]));
    call("run", "sides.yaml", "--out", "third");
    expect(bytesOf("second")).toEqual(bytesOf("first"));
    expect(bytesOf("third")).toEqual(bytesOf("first"));
    call("run", "sides.yaml", "--out", "fourth", "--seed", "other");
    expect(bytesOf("fourth")).not.toEqual(bytesOf("first"));
  });

  it("takes seed, replications and length from the call", () => {
    const { output } = call("run", two, "--out", "short", "--seed", "007", "--replications", "2", "--length", "1 h");
    expect(output).toContain("2 replications of 60 min");
    expect(output).toContain('seed "007"');
  });

  it("says nothing with --quiet, and writes all the same", () => {
    expect(call("run", two, "--quiet", "--out", "quiet")).toEqual({ code: 0, output: "", errors: "" });
    expect(bytesOf("quiet")).toEqual(bytesOf("reports/two"));
  });

  it("adds events and shots with --events", () => {
    const { code } = call("run", two, "--events", "--out", "events", "--replications", "2", "--length", "30 min");
    expect(code).toBe(0);
    expect(readdirSync(inFolder("events")).toSorted()).toEqual(csvNames(["comparison"]));
    const rows: readonly Readonly<Record<string, string>>[] = parse(bytesOf("events")["events.csv"] ?? "", {
      columns: true,
    });
    expect([...new Set(rows.map((row) => row["replication"]))]).toEqual(["1", "2"]);
  });

  it("writes nothing where the scenario is wrong", () => {
    const { code, output } = call("run", two, "--set", "stations.cavities=0", "--out", "wrong");
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(readdirSync(folder)).not.toContain("wrong");
  });

  it("leaves 74 where --out is a file", () => {
    const { code, errors } = call("run", two, "--out", fileOf("taken", ""));
    expect(code).toBe(74);
    expect(errors).toContain("remedy");
  });
});

describe("compare", () => {
  it("puts all tables of all scenarios into reports/<base>-against-<others>", () => {
    const { code, output } = call("compare", one, two);
    expect(code).toBe(0);
    expect(output).toMatch(/^two makes .* good parts an hour more than one/m);
    expect(readdirSync(inFolder("reports/one-against-two")).toSorted()).toEqual(csvNames(["events", "shots"]));
    const rows: readonly Readonly<Record<string, string>>[] = parse(
      bytesOf("reports/one-against-two")["throughput.csv"] ?? "",
      {
        columns: true,
      },
    );
    expect([...new Set(rows.map((row) => row["scenario"]))]).toEqual(["one", "two"]);
  });

  it.each([
    [[one], "there is only one scenario"],
    [[one, path.join(folder, one)], "two scenarios are called one"],
  ])("leaves 2 for %j", (files, words) => {
    const { code, output, errors } = call("compare", ...files);
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain(words);
  });
});
