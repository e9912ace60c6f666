// Names, folders and settings of runs, and the variants of a comparison.
import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { newFolder, projectFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
const inFolder = (...names: readonly string[]) => path.join(folder, ...names);
for (const name of ["one-station.yaml", "two-station.yaml"]) {
  copyFileSync(path.join(projectFolder, "scenarios", name), inFolder(name));
}
// The length stands in the file, so that the call has no settings but those under test.
const short = readFileSync(inFolder("two-station.yaml"), "utf8").replace(
  /^run:.*$/mu,
  "run: { length: 30 min, replications: 2, seed: demo }",
);
writeFileSync(inFolder("cell.yaml"), short);

const call = (...args: readonly string[]) => callHere(args, { folder });
const rowsOf = (...names: readonly string[]) =>
  parse<Record<string, string>>(readFileSync(inFolder(...names), "utf8"), { columns: true });
/** Without what these tests are not about. */
const run = (...args: readonly string[]) => call("run", ...args, "--changes", "off", "--sensitivity", "off");
const eight = "stations.*.steps.cool=8 s";

describe("a run with settings", () => {
  it("has a folder of its own and says its settings on the screen, in every CSV file, in the package and in the report", async () => {
    const { code, output } = await call("run", "cell.yaml", "--events", "--set", eight);
    expect(code).toBe(0);
    expect(output).toMatch(/^[^\n]+\nSettings: stations\.\*\.steps\.cool=8 s\n/u);
    const files = readdirSync(inFolder("reports/cell-cool-8-s"));
    const tables = files.filter((name) => name.endsWith(".csv"));
    expect(tables).toEqual(expect.arrayContaining(["throughput.csv", "events.csv", "shots.csv"]));
    for (const name of tables) {
      const rows = rowsOf("reports/cell-cool-8-s", name);
      expect(rows.length).toBeGreaterThan(0);
      expect(new Set(rows.map((row) => row["variant"]))).toEqual(new Set([eight]));
    }
    const described = JSON.parse(readFileSync(inFolder("reports/cell-cool-8-s/datapackage.json"), "utf8")) as object;
    expect(described).toMatchObject({
      name: "cell-cool-8-s",
      scenarios: [{ name: "cell", file: "cell.yaml", variant: eight }],
    });
    expect(readFileSync(inFolder("reports/cell-cool-8-s/report.html"), "utf8")).toContain(`Settings: ${eight}</p>`);
  });

  it("without any, has an empty variant", async () => {
    expect((await run("cell.yaml")).code).toBe(0);
    expect(new Set(rowsOf("reports/cell/throughput.csv").map((row) => row["variant"]))).toEqual(new Set([""]));
  });

  it.each([
    ["CON", "_CON"],
    ["a/b: c?", "a-b- c-"],
    ["kühl 冷", "kühl 冷"],
    ["..", "scenario"],
  ])("with --name %j is written into reports/%s", async (name, expected) => {
    const { code, output } = await run("cell.yaml", "--name", name, "--set", eight);
    expect(code).toBe(0);
    expect(existsSync(inFolder("reports", expected, "throughput.csv"))).toBe(true);
    expect(output.split("\n")[1]).toBe(`${name}: ${eight}`);
  });

  it.each([" ", "x".repeat(81), "two\nlines"])("refuses the name %j", async (name) => {
    const { code, output, errors } = await run("cell.yaml", "--name", name);
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain("[name-form]");
  });

  it("gets a bounded folder name, different for different settings", async () => {
    const before = readdirSync(inFolder("reports"));
    for (const last of [1, 2]) {
      const settings = [...Array(9).keys()].flatMap((i) => ["--set", `stations.*.steps.cool=7.${i}${last} s`]);
      expect((await run("cell.yaml", ...settings)).code).toBe(0);
    }
    const folders = readdirSync(inFolder("reports")).filter((name) => !before.includes(name));
    expect(folders).toHaveLength(2);
    for (const name of folders) expect(name.length).toBeLessThanOrEqual(80);
  });
});

describe("a folder with results", () => {
  it("is replaced by the same run, and keeps no table that the new run lacks, but every other file", async () => {
    expect((await run("cell.yaml", "--out", "same", "--events")).code).toBe(0);
    writeFileSync(inFolder("same/notes.txt"), "mine");
    expect(readdirSync(inFolder("same"))).toContain("events.csv");
    expect((await run("cell.yaml", "--out", "same")).code).toBe(0);
    const files = readdirSync(inFolder("same"));
    expect(files).toEqual(expect.arrayContaining(["notes.txt", "throughput.csv"]));
    expect(files).not.toContain("events.csv");
    expect(files).not.toContain("shots.csv");
  });

  it.each([
    ["another scenario", ["one-station.yaml", "--length", "30 min", "--replications", "2"]],
    ["other settings", ["cell.yaml", "--set", eight]],
    ["another seed", ["cell.yaml", "--seed", "other"]],
  ])("is not overwritten by a run with %s unless told to", async (_, args) => {
    expect((await run("cell.yaml", "--out", "kept", "--replace")).code).toBe(0);
    const before = readFileSync(inFolder("kept/throughput.csv"), "utf8");
    const { code, output, errors } = await run(...args, "--out", "kept");
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain("[folder-other-run]");
    expect(errors).toMatch(/^ {4}remedy +Add --replace .*--out/mu);
    expect(readFileSync(inFolder("kept/throughput.csv"), "utf8")).toBe(before);
    expect((await run(...args, "--out", "kept", "--replace")).code).toBe(0);
    expect(readFileSync(inFolder("kept/throughput.csv"), "utf8")).not.toBe(before);
  });

  it("is replaced after a change of the file and of the version, which is said", async () => {
    writeFileSync(inFolder("edited.yaml"), short);
    await run("edited.yaml", "--out", "edited");
    const file = inFolder("edited/datapackage.json");
    writeFileSync(file, readFileSync(file, "utf8").replace(/"version": "[^"]+"/u, '"version": "0.0.1"'));
    expect((await run("edited.yaml", "--out", "edited")).errors).toMatch(/are in edited\n$/u);
    writeFileSync(inFolder("edited.yaml"), `${short}# slower\n`);
    const { code, errors } = await run("edited.yaml", "--out", "edited");
    expect(code).toBe(0);
    expect(errors).toContain("in place of those before edited.yaml changed");
  });

  it("with files of the same names that no run wrote is left as it is", async () => {
    const mine = newFolder();
    writeFileSync(path.join(mine, "stops.csv"), "mine");
    const { code, errors } = await run("cell.yaml", "--out", mine);
    expect(code).toBe(2);
    expect(errors).toContain("[folder-other-files]");
    expect(errors).toMatch(/^ {4}found +stops\.csv$/mu);
    expect(readdirSync(mine)).toEqual(["stops.csv"]);
  });

  it("is not trusted where its package is damaged or names files outside", async () => {
    const damaged = newFolder();
    writeFileSync(path.join(damaged, "datapackage.json"), "{");
    expect((await run("cell.yaml", "--out", damaged)).errors).toContain("[folder-other-files]");
    expect((await run("cell.yaml", "--out", "led")).code).toBe(0);
    const file = inFolder("led/datapackage.json");
    writeFileSync(file, readFileSync(file, "utf8").replace('"path": "throughput.csv"', '"path": "../outside.csv"'));
    writeFileSync(inFolder("outside.csv"), "mine");
    expect((await run("cell.yaml", "--out", "led", "--replace")).code).toBe(0);
    expect(readFileSync(inFolder("outside.csv"), "utf8")).toBe("mine");
  });
});

describe("compare --variant", () => {
  const faster = "fast: stations.*.steps.cool={ triangular: [6 s, 6.5 s, 7 s] }; valve.shift=*0.9";

  it("compares the file with its variants, by their names", async () => {
    const { code, output } = await call("compare", "cell.yaml", "--variant", `8 s: ${eight}`, "--variant", faster);
    expect(code).toBe(0);
    expect(output).toContain("8 s: stations.*.steps.cool=8 s");
    const rows = rowsOf("reports/cell-against-8-s-fast/comparison.csv");
    expect(new Set(rows.map(({ base, other }) => `${base} ${other}`))).toEqual(new Set(["cell 8 s", "cell fast"]));
    expect(new Set(rows.map(({ variant }) => variant))).toEqual(
      new Set([eight, "stations.*.steps.cool={ triangular: [6 s, 6.5 s, 7 s] }; valve.shift=*0.9"]),
    );
  });

  it("gives what a copy of the file with the same value gives", async () => {
    writeFileSync(inFolder("copy.yaml"), short.replaceAll(/cool: .*/gu, "cool: 8 s"));
    expect(readFileSync(inFolder("copy.yaml"), "utf8")).not.toBe(short);
    await call("compare", "cell.yaml", "copy.yaml", "--out", "by-copy");
    await call("compare", "cell.yaml", "--variant", `copy: ${eight}`, "--out", "by-variant");
    const measured = (name: string) => rowsOf(name, "comparison.csv").map((row) => ({ ...row, variant: "" }));
    expect(measured("by-variant")).toEqual(measured("by-copy"));
  });

  it("applies each variant to every file", async () => {
    const { code, output } = await call(
      "compare",
      "cell.yaml",
      "two-station.yaml",
      "--length",
      "30 min",
      "--replications",
      "2",
      "--variant",
      `8 s: ${eight}`,
    );
    expect(code).toBe(0);
    for (const name of ["two-station", "cell 8 s", "two-station 8 s"])
      expect(output).toMatch(new RegExp(`^${name} `, "mu"));
  });

  it("reports the faults of all variants at once, each with its variant, place, value and remedy", async () => {
    const variants = ["a: stations.*.steps.cool=8", "b: stations.lefft.cavities=2", "c:", "a: valve.shift=1 s", "d"];
    const { code, output, errors } = await call(
      "compare",
      "cell.yaml",
      ...variants.flatMap((text) => ["--variant", text]),
    );
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toMatch(
      /^--variant stations\.\*\.steps\.cool: error: With variant "a": 8 has no unit.*\n.*\n {4}found +8$/mu,
    );
    expect(errors).toMatch(/^--variant stations\.lefft\.cavities: error: With variant "b": .*\[set-path\]$/mu);
    for (const each of ["variant-form", "variant-name", "set-form"]) expect(errors).toContain(`[${each}]`);
  });

  it("says with which variant a cell cannot work", async () => {
    const { code, errors } = await call("compare", "cell.yaml", "--variant", "small: delivery.shotCapacity=50 g");
    expect(code).toBe(1);
    expect(errors).toMatch(/^cell\.yaml:\d+:\d+: error: With variant "small": The shot /mu);
  });
});
