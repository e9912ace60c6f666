// Help, error messages and exit codes of correct and wrong calls.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { Ajv2020, type AnySchemaObject } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { builtCommands, plannedCommands, plannedOptions } from "#cli/commands/commands.ts";
import { callBlowcell, newFolder, projectFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const packageText = readFileSync(path.join(projectFolder, "package.json"), "utf8");
const two = "scenarios/two-station.yaml";
const names = builtCommands.map(({ name }) => name);

describe("blowcell", () => {
  it("--version prints only the package's version", () => {
    const { version } = JSON.parse(packageText) as { version: string };
    expect(callBlowcell(["--version"])).toEqual({ code: 0, output: `${version}\n`, errors: "" });
  });

  it("--help lists every built command and no planned one", () => {
    const { code, output, errors } = callBlowcell(["--help"]);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    for (const name of names) expect(output).toMatch(new RegExp(`^  ${name}\\b`, "m"));
    for (const name of plannedCommands) expect(output).not.toMatch(new RegExp(`^  ${name}\\b`, "m"));
  });

  it.each(names)("%s --help shows an example", async (name) => {
    const { code, output } = await callHere([name, "--help"]);
    expect(code).toBe(0);
    expect(output).toContain(`Example:\n  blowcell ${name}`);
    for (const option of plannedOptions) expect(output).not.toContain(option);
  });

  it("has no command that is both built and planned", () => {
    expect(names.filter((name) => plannedCommands.includes(name))).toEqual([]);
  });

  it("without a command prints its help on standard error and exits with 2", async () => {
    const { code, output, errors } = await callHere([]);
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain("Usage: blowcell");
  });

  it.each([
    [["shcema"], "unknown command 'shcema' (Did you mean schema?)"],
    [["schema", "--verbos"], "unknown option '--verbos' (Did you mean --verbose?)"],
    [["--nonsense"], "unknown option '--nonsense'"],
    [["schema", "file.yaml"], "too many arguments"],

    [["schema", "--excel", "1/3"], "--excel is planned but not built yet"],
    [["\u001b[31mred"], "unknown command '\\u001b[31mred'"],
  ])("%j exits with 2 and prints the fault and its remedy", async (args, words) => {
    const { code, output, errors } = await callHere(args);
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain(words);
    expect(errors).toMatch(/^ {4}remedy {4}blowcell .*--help/m);
  });

  it("uses no color when its output is not a terminal", () => {
    const environment = { FORCE_COLOR: "1", CLICOLOR_FORCE: "1", TERM: "xterm-256color" };
    for (const args of [["--help"], ["shcema"]]) {
      const { output, errors } = callBlowcell(args, { environment });
      expect(output + errors).not.toContain("\u001b");
    }
  });

  it("schema prints only a JSON Schema, which ajv accepts as draft 2020-12", async () => {
    const { code, output, errors } = await callHere(["schema"]);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    const validator = new Ajv2020({ strict: false });
    const accepts = validator.compile(JSON.parse(output) as AnySchemaObject);
    expect(accepts({ nonsense: 1 })).toBe(false);
  });

  it.each([
    ["stations.count=4", "--set stations.count", "`stations.left.count=3`"],
    ["stations.left.steps.cool=7", "--set stations.left.steps.cool", "`7 s`"],
    ["stations.*.steps.vent=-1 s", "--set stations.*.steps.vent", "found     -0.5 s, moved by -1 s"],
    ["run.seed=[a", "--set run.seed", "found     [a"],
    ["nonsense", "--set nonsense", "path=value"],
  ])("reports --set %s by its path", async (setting, option, says) => {
    const { code, errors } = await callHere(["check", two, "--set", setting]);
    expect(code).toBe(2);
    expect(errors.startsWith(`${option}: error: `)).toBe(true);
    expect(errors).toContain(says);
  });

  it("takes the settings of the README's example", async () => {
    const faster = ["--set", "stations.*.steps.cool=7 s", "--set", "delivery.plasticatingRate=120 kg/h"];
    const { code, output, errors } = await callHere(["check", two, ...faster]);
    expect(code).toBe(0);
    expect(errors).toMatch(/^--set delivery\.plasticatingRate: warning: .* \[set-spread\]$/m);
    expect(output).toMatch(/^ *cool +7\.00$/m);
  });

  it("--units us changes text and report.html, never CSV files, the data package or JSON", async () => {
    const folder = newFolder();
    const bytesOf = async (units: string) => {
      const args = ["run", two, "--replications", "2", "--length", "1 h", "--units", units, "--out"];
      const { code, output } = await callHere([...args, path.join(folder, units)]);
      expect(code).toBe(0);
      const json = (await callHere([...args, path.join(folder, `${units}-json`), "--json"])).output;
      const files = readdirSync(path.join(folder, units)).toSorted();
      const texts = files.map((name) => [name, readFileSync(path.join(folder, units, name), "utf8")] as const);
      return {
        output,
        json,
        report: new Map(texts).get("report.html"),
        data: texts.filter(([name]) => name !== "report.html"),
      };
    };
    const si = await bytesOf("si");
    const us = await bytesOf("us");
    expect(us.data).toEqual(si.data);
    expect(us.json).toBe(si.json);
    expect(si.output).toMatch(/^Melt +[\d.]+(?: ± [\d.]+)? kg\/h$/m);
    expect(us.output).toMatch(/^Melt +[\d.]+(?: ± [\d.]+)? lb\/h$/m);
    expect(us.report).toContain("<td>lb/h</td>");
    expect(us.report).not.toContain("<td>kg/h</td>");
  });

  it("--units names its choices when it gets another", async () => {
    const { code, errors } = await callHere(["check", two, "--units", "imperial"]);
    expect(code).toBe(2);
    expect(errors).toMatch(/'--units <system>' argument 'imperial' is invalid\. Allowed choices are si, us\./);
  });
});
