// Calls `explain` and `new` as a user does: answers, files, exit codes, and that nothing is overwritten.
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import path from "node:path";
import { Ajv2020, type AnySchemaObject } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { firstCases, isLong } from "../support/caseCount.ts";
import { builtCommand, newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

describe("explain", () => {
  it("alone lists the topics", async () => {
    const { code, output, errors } = await callHere(["explain"]);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    for (const topic of ["±", "keys:", "holding a full shot", "safety", "throughput.csv", "exit code 74"]) {
      expect(output.replaceAll(/\s+/gu, " ")).toContain(topic);
    }
    expect(output.split("\n").filter((line) => Array.from(line).length > 80)).toEqual([]);
  });

  it.each([
    [["awaiting", "melt"], "awaiting melt: state (station, waiting)"],
    [["HOLDING", "a", "full", "shot"], "no mold is open and empty"],
    [["stations.left.steps.cool"], "example: cool: { triangular: [7.0 s, 7.5 s, 9.0 s] }"],
    [["--set"], "--set: option"],
    [["operators"], "crew: { operators: 2 }"],
    [["unit-missing"], "remedy:"],
    [["OEE"], "formula: PRI GQ / PBT"],
    [["2"], "exit code 2"],
    [["ENOSPC"], "The disk is full."],
  ])("%j answers", async (words, told) => {
    const { code, output, errors } = await callHere(["explain", ...words]);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    expect(output).toContain(told);
  });

  it("what it does not know leaves 2 and names what is near", async () => {
    const { code, output, errors } = await callHere(["explain", "unit-mising"]);
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain("Did you mean `unit-missing`?");
    expect(errors.trimEnd().split("\n").at(-1)).toBe("More: blowcell explain topic-unknown");
  });

  it("tells what it knows beside what it does not", async () => {
    const { code, output, errors } = await callHere(["explain", "cool", "xyzzyxyzzy"]);
    expect(code).toBe(2);
    expect(output).toContain("cool: key");
    expect(errors).toContain("xyzzyxyzzy");
  });

  it("as JSON holds what `schema --result` promises, and nothing else is printed", async () => {
    const { code, output, errors } = await callHere(["explain", "awaiting", "melt", "--json"]);
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    const schema = JSON.parse((await callHere(["schema", "--result"])).output) as AnySchemaObject;
    const result = JSON.parse(output) as { readonly tables: { readonly explanation: readonly object[] } };
    expect(new Ajv2020({ strict: false }).validate(schema, result)).toBe(true);
    expect(result.tables.explanation).toMatchObject([{ topic: "awaiting melt", kind: "state" }]);
  });
});

describe("an error's last line names its topic", () => {
  const lastOf = (text: string) => text.trimEnd().split("\n").at(-1);

  it("of a wrong call", async () => {
    expect(lastOf((await callHere(["shcema"])).errors)).toBe("More: blowcell explain commands");
    expect(lastOf((await callHere(["schema", "--verbos"])).errors)).toBe("More: blowcell explain options");
  });

  it("of a scenario, with each code once and at most three", async () => {
    const folder = newFolder();
    writeFileSync(
      path.join(folder, "bad.yaml"),
      "format: 1\ndelivery: { kind: screw }\nstation: 3\nrun: { length: 8 }\n",
    );
    const { code, errors } = await callHere(["check", "bad.yaml"], { folder });
    expect(code).toBe(2);
    const [, codes = ""] = /^More: blowcell explain (.*) …$/u.exec(lastOf(errors) ?? "") ?? [];
    expect(codes.split(" ")).toHaveLength(3);
    for (const each of codes.split(" ")) expect(errors).toContain(`[${each}]`);
    expect((await callHere(["explain", ...codes.split(" ")])).code).toBe(0);
  });

  it("of a machine that refuses", async () => {
    const folder = newFolder();
    writeFileSync(path.join(folder, "out"), "a file");
    const scenario = path.join(import.meta.dirname, "../../scenarios/two-station.yaml");
    const { code, errors } = await callHere(["run", scenario, "--replications", "1", "--out", "out/x"], { folder });
    expect(code).toBe(74);
    expect(lastOf(errors)).toBe("More: blowcell explain ENOTDIR");
    expect((await callHere(["explain", "ENOTDIR"])).code).toBe(0);
  });
});

describe("new", () => {
  const length = isLong ? [] : ["--length", "2 h", "--replications", "3"];
  const kinds = ["reciprocating-screw", "accumulator-head", "continuous"];

  it.each(kinds.flatMap((kind) => firstCases(["2", "1", "4"], 1).map((stations) => [kind, stations] as const)))(
    "--kind %s --stations %s writes a file that check and run take without a word",
    async (kind, stations) => {
      const folder = newFolder();
      const made = await callHere(["new", "mine.yaml", "--kind", kind, "--stations", stations, "--quiet"], { folder });
      expect(made).toEqual({ code: 0, output: "", errors: "" });
      expect(readdirSync(folder)).toEqual(["mine.yaml"]);
      const checked = await callHere(["check", "mine.yaml"], { folder });
      expect([checked.code, checked.errors]).toEqual([0, ""]);
      const ran = await callHere(["run", "mine.yaml", "--out", "out", ...length], { folder });
      expect([ran.code, ran.errors]).toEqual([0, "report.html and 8 CSV files are in out\n"]);
      expect(ran.output.replaceAll(/\s+/gu, " ")).toContain("Not answered: melt in kg/h (give `product.partMass`)");
      expect(readFileSync(path.join(folder, "out/report.html"), "utf8")).not.toMatch(/undefined|NaN/u);
    },
  );

  it("makes two stations of a reciprocating screw where nothing else is said", async () => {
    const folder = newFolder();
    const { code, errors } = await callHere(["new", "mine.yaml"], { folder });
    expect({ code, errors }).toEqual({
      code: 0,
      errors: "mine.yaml is written; blowcell check mine.yaml shows its ideal cycle\n",
    });
    const text = readFileSync(path.join(folder, "mine.yaml"), "utf8");
    expect(text).toContain("kind: reciprocating-screw");
    expect(text).toContain("count: 2");
  });

  it("never writes over what is there, be it a file, a link to nowhere or a folder", async () => {
    const folder = newFolder();
    writeFileSync(path.join(folder, "mine.yaml"), "of my own");
    symlinkSync("nowhere", path.join(folder, "link.yaml"));
    mkdirSync(path.join(folder, "dir.yaml"));
    for (const [name, told] of [
      ["mine.yaml", "file-exists"],
      ["link.yaml", "file-exists"],
      ["dir.yaml", "file-is-folder"],
      [".", "file-is-folder"],
    ] as const) {
      const { code, output, errors } = await callHere(["new", name], { folder });
      expect({ code, output }).toEqual({ code: 2, output: "" });
      expect(errors).toContain(`[${told}]`);
    }
    expect(readFileSync(path.join(folder, "mine.yaml"), "utf8")).toBe("of my own");
    expect(readdirSync(folder).toSorted()).toEqual(["dir.yaml", "link.yaml", "mine.yaml"]);
  });

  it.runIf(isLong)("of many at once lets one win, and the others leave its file alone", async () => {
    const folder = newFolder();
    const one = (stations: number) =>
      new Promise<number | null>((resolve) => {
        const args = [builtCommand, "new", "mine.yaml", "--stations", String(stations), "--quiet"];
        spawn(process.execPath, args, { cwd: folder }).on("close", resolve);
      });
    const codes = await Promise.all([1, 2, 3, 4].map(one));
    expect(codes.filter((code) => code === 0)).toHaveLength(1);
    expect(codes.filter((code) => code !== 0 && code !== 2 && code !== 74)).toEqual([]);
    const text = readFileSync(path.join(folder, "mine.yaml"), "utf8");
    expect(text).toContain(`count: ${codes.indexOf(0) + 1}`);
    expect(readdirSync(folder)).toEqual(["mine.yaml"]);
  });

  it.each([
    [["no/such/mine.yaml"], "folder-missing"],
    [["mine.txt"], "file-name"],
    [["file/mine.yaml"], "folder-missing"],
    [["con.yaml"], "file-name"],
    [["mi*ne.yaml"], "file-name"],
    [["mine.yaml", "--stations", "0"], "option-value"],
    [["mine.yaml", "--stations", "17"], "option-value"],
    [["mine.yaml", "--stations", "2.5"], "option-value"],
    [["mine.yaml", "--kind", "continous"], "Did you mean `continuous`?"],
  ])("%j is refused, and nothing is written", async (args, told) => {
    const folder = newFolder();
    writeFileSync(path.join(folder, "file"), "no folder");
    const { code, output, errors } = await callHere(["new", ...args], { folder });
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors).toContain(told);
    expect(errors).toMatch(/^ {4}remedy /mu);
    expect(readdirSync(folder)).toEqual(["file"]);
  });

  it("leaves 74 where the machine refuses the name", async () => {
    const folder = newFolder();
    const { code, errors } = await callHere(["new", `${"x".repeat(300)}.yaml`], { folder });
    expect(code).toBe(74);
    expect(errors).toContain("the name is too long");
    expect(readdirSync(folder)).toEqual([]);
  });

  it("writes into a folder that is there", async () => {
    const folder = newFolder();
    mkdirSync(path.join(folder, "cells"));
    expect((await callHere(["new", "cells/my cell.yml"], { folder })).code).toBe(0);
    expect(existsSync(path.join(folder, "cells/my cell.yml"))).toBe(true);
  });
});

it("--help shows an example of every command", async () => {
  const { output } = await callHere(["--help"]);
  expect(output).toContain("  blowcell new mine.yaml --stations 2 --kind continuous\n");
  expect(output).toContain("  blowcell explain holding a full shot\n");
});
