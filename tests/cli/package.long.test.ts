// The package as a user gets it: packed, installed into an empty folder, type-checked and run with the README's example.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { isBuiltin } from "node:module";
import path from "node:path";
import { build } from "esbuild";
import { beforeAll, describe, expect, it } from "vitest";
import { bundleSettings, root } from "../tools/build/bundleSettings.mjs";
import { withinCore } from "../tools/build/wasmCore.mjs";
import { isLong } from "../support/caseCount.ts";
import { thirdParty } from "../tools/build/thirdParty.mjs";
import { newFolder } from "./callBlowcell.ts";

const folder = path.join(newFolder(), "stranger");

function ran(command: string, args: readonly string[], where = folder): { code: number | null; output: string } {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd: where, encoding: "utf8" });
  return { code: status, output: `${stdout}${stderr}` };
}

/** Calls the program that the package brings. */
const blowcell = (...args: readonly string[]) => ran(path.join(folder, "node_modules/.bin/blowcell"), args);

/** The example of the library's README, unchanged. */
function example(): string {
  const readme = readFileSync(path.join(root, "src/README.md"), "utf8");
  return /```ts\n(.*?)```/su.exec(readme)?.[1] ?? "";
}

/** Runs a user's program, and gives its output as JSON. */
function answerOf(program: string): unknown {
  writeFileSync(path.join(folder, "program.js"), program);
  const { code, output } = ran(process.execPath, ["program.js"]);
  expect({ code, output }).toMatchObject({ code: 0 });
  return JSON.parse(output);
}

const readShipped = `
  import { readFileSync } from "node:fs";
  import * as blowcell from "blowcell";
  const textOf = (name) => readFileSync("node_modules/blowcell/scenarios/" + name + ".yaml", "utf8");
  const read = (name, set = [], text = textOf(name)) => blowcell.readScenario(text, { name, file: name + ".yaml", set });
  const show = (answer) => console.log(JSON.stringify(answer));`;

/** The nearest folder above a file whose package.json names a package. */
function ownerOf(file: string): { readonly name: string; readonly version: string } {
  for (let place = path.dirname(file); ; place = path.dirname(place)) {
    const description = path.join(place, "package.json");
    const found = existsSync(description)
      ? (JSON.parse(readFileSync(description, "utf8")) as { name?: string; version?: string })
      : {};
    if (found.name !== undefined && found.version !== undefined) return { name: found.name, version: found.version };
  }
}

beforeAll(() => {
  mkdirSync(folder);
  // The build is made before the tests; a build now would change the program under test.
  const packed = ran("npm", ["pack", "--ignore-scripts", "--silent", "--pack-destination", folder], root);
  const tarball = path.join(folder, packed.output.trim().split("\n").at(-1) ?? "");
  writeFileSync(path.join(folder, "package.json"), JSON.stringify({ name: "stranger", private: true, type: "module" }));
  const installed = ran("npm", ["install", "--prefer-offline", "--no-audit", "--no-fund", tarball]);
  if (installed.code !== 0) throw new Error(installed.output);
}, 120_000);

interface Described {
  readonly dependencies: Readonly<Record<string, string>>;
}

const dist = path.join(folder, "node_modules/blowcell/dist");

function builtFiles(): readonly string[] {
  const entries = readdirSync(dist, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return entries.map(({ parentPath, name }) => path.relative(dist, path.join(parentPath, name))).toSorted();
}

describe("the package", () => {
  it("brings the program", () => {
    const { version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as { version: string };
    expect(ran("npx", ["--no-install", "blowcell", "--version"])).toEqual({ code: 0, output: `${version}\n` });
    const scenario = "node_modules/blowcell/scenarios/two-station.yaml";
    expect(blowcell("check", scenario).output).toContain("The ideal cycle is 6.17 s a shot");
  });

  it("type-checks and runs the README's example, and has types that reject a wrong name", { timeout: 60_000 }, () => {
    writeFileSync(path.join(folder, "example.ts"), example());
    writeFileSync(path.join(folder, "wrong.ts"), `import { idealCicle } from "blowcell";\nidealCicle();\n`);
    const compiler = path.join(root, "node_modules/typescript/bin/tsc");
    const types = ["--types", "node", "--typeRoots", path.join(root, "node_modules/@types")];
    const strict = ["--strict", "--target", "es2023", "--module", "nodenext", ...types, "example.ts", "wrong.ts"];
    const checked = ran(process.execPath, [compiler, ...strict]);
    expect(checked.code).not.toBe(0);
    const faults = checked.output.split("\n").filter((line) => line.includes("error"));
    expect(faults).toEqual([expect.stringMatching(/^wrong\.ts.* 'idealCicle'/u)]);
    const { code, output } = ran(process.execPath, ["example.js"]);
    expect({ code, output }).toMatchObject({ code: 0, output: expect.stringContaining("one-station 12.34 s a shot") });
    expect(output).toMatch(/^2\.00 times as many good parts$/mu);
  });

  it("contains program, scenarios and documentation, and no sources", () => {
    const inside = path.join(folder, "node_modules/blowcell");
    const top = ["LICENSE", "NOTICE", "README.md", "dist", "package.json", "reports", "scenarios", "src"];
    expect(readdirSync(inside).toSorted()).toEqual(top);
    expect(readdirSync(path.join(inside, "reports"))).toEqual(["README.md"]);
    expect(readdirSync(path.join(inside, "scenarios"))).toEqual(
      expect.arrayContaining(["README.md", "scenario.schema.json"]),
    );
    const texts = readdirSync(path.join(inside, "src"), { recursive: true, withFileTypes: true });
    const files = texts.filter((entry) => entry.isFile()).map(({ name }) => name);
    expect(files).toEqual(["README.md", "README.md", "README.md", "README.md"]);
  });

  it("holds scripts, types and the list of bundled packages, and nothing made for one Node or one processor", () => {
    const built = builtFiles();
    const scripts = built.filter((file) => file.endsWith(".js"));
    expect(scripts.filter((file) => /\d+\.\d+|x64|arm64/u.test(file))).toEqual([]);
    const others = built.filter((file) => !scripts.includes(file) && !file.endsWith(".d.ts"));
    expect(others).toEqual(["THIRD-PARTY.txt", ...["package.json", "page.json"].map((name) => path.join("cli", name))]);
  });

  it("imports when it runs exactly what is installed with it", () => {
    const scripts = builtFiles().filter((file) => file.endsWith(".js"));
    const code = scripts.map((file) => readFileSync(path.join(dist, file), "utf8")).join("");
    const imported = [...code.matchAll(/\b(?:from|require\(|import\()"([a-z@][\w./@-]*)"/gu)].map(([, name]) => name!);
    const packages = new Set(imported.filter((name) => !isBuiltin(name)).map((name) => name.split("/")[0]));
    const { dependencies } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as Described;
    expect(packages).toEqual(new Set(Object.keys(dependencies)));
  });

  it("exports the names in the README of the library, and no others", () => {
    const names = answerOf(`${readShipped} show(Object.keys(blowcell));`) as string[];
    const readme = readFileSync(path.join(root, "src/README.md"), "utf8");
    expect(names.filter((name) => !readme.includes(`\`${name}\``))).toEqual([]);
    const promised = ["compareStudies", "idealCycle", "readScenario", "runStudy", "scenarioSchema", "toCsv"];
    expect(names).toEqual(expect.arrayContaining(promised));
  });

  it("gives the same comparison as the program, to the last digit", { timeout: 60_000 }, () => {
    // Each scenario has its own run, so that the base's run must be applied to the other.
    const runs = {
      "one-station": "{ length: 4 h, replications: 3, seed: here }",
      "two-station": "{ length: 6 h, seed: there }",
    };
    for (const [name, run] of Object.entries(runs)) {
      const text = readFileSync(path.join(root, `scenarios/${name}.yaml`), "utf8");
      writeFileSync(path.join(folder, `${name}.yaml`), text.replace(/^run:.*$/mu, `run: ${run}`));
    }
    const files = Object.keys(runs).map((name) => `${name}.yaml`);
    expect(blowcell("compare", ...files, "--out", "compared")).toMatchObject({ code: 0 });
    const answer = answerOf(`${readShipped}
      const scenarioOf = (name) => read(name, [], readFileSync(name + ".yaml", "utf8")).scenario;
      const { outcomes, rows } = blowcell.compareScenarios(${JSON.stringify(Object.keys(runs))}.map(scenarioOf));
      const [base, other] = outcomes.map(({ study }) => study);
      show([rows, blowcell.compareStudies(base, [other])].map((each) => blowcell.toCsv(blowcell.comparisonTable(each, [base.scenario, other.scenario]))));`);
    const written = readFileSync(path.join(folder, "compared/comparison.csv"), "utf8");
    expect(answer).toEqual([written, written]);
  });

  it("settles estimated times on reading, or reports their missing keys", () => {
    const [whole, lacking] = answerOf(`${readShipped}
      const { scenario } = read("thin-bottle");
      const { scenario: none, issues } = read("thin-bottle", [], textOf("thin-bottle").replace(/ {2}wall: .*\\n/, ""));
      show([blowcell.idealCycle(scenario).secondsPerShot, [none ?? null, issues.map(({ code }) => code)]]);`) as [
      number,
      [unknown, string[]],
    ];
    const checked = blowcell("check", "node_modules/blowcell/scenarios/thin-bottle.yaml");
    expect(checked.output).toContain(`The ideal cycle is ${whole.toFixed(2)} s a shot`);
    expect(lacking).toEqual([null, ["estimate-inputs-missing"]]);
  });
});

describe("the list of bundled packages", () => {
  const held = (): string => readFileSync(path.join(folder, "node_modules/blowcell/dist/THIRD-PARTY.txt"), "utf8");
  const title = /^(\S+ \d+\.\d+\.\d+\S*) \([\w. -]+\)$/gmu;

  it.runIf(isLong)("lists exactly the packages whose code is included", { timeout: 60_000 }, async () => {
    const entryPoints = ["src/cli/blowcell.ts", "src/cli/worker.ts", "src/cli/main.ts", "src/blowcell.ts"];
    const scripts = ["src/page/opener.ts", "src/page/program.ts"];
    const settings = { ...bundleSettings, outdir: folder, write: false, metafile: true } as const;
    const bundles = await Promise.all([
      build({ ...settings, entryPoints }),
      // The page has every package inside.
      build({ ...settings, entryPoints: scripts, platform: "browser", external: [] }),
    ]);
    const inputs = [...new Set(bundles.flatMap(({ metafile }) => Object.keys(metafile.inputs)))];
    const owners = [...inputs, ...withinCore(inputs)].map((file) => ownerOf(path.join(root, file)));
    const names = new Set(owners.map(({ name, version }) => `${name} ${version}`));
    expect(names.delete(`blowcell ${ownerOf(path.join(root, "README.md")).version}`)).toBe(true);
    const listed = [...held().matchAll(title)].map(([, name]) => name);
    expect(new Set(listed)).toEqual(names);
    expect(listed.length).toBe(names.size);
  });

  it("contains the text of every license", () => {
    const [, ...entries] = held().split(`\n${"-".repeat(80)}\n`);
    expect(entries.length).toBeGreaterThan(5);
    // The grants of the MIT, ISC, BSD and Apache 2.0 licenses.
    const grant = /Permission is hereby granted|Permission to use, copy|Redistribution and use|perpetual,\s+worldwide/u;
    expect(entries.filter((entry) => !grant.test(entry))).toEqual([]);
  });

  it.each([
    ["has no license", {}, undefined, "names no licence"],
    ["has no license text", { license: "MIT" }, undefined, "brings no text"],
    ["has no license text in its README", { license: "MIT" }, "# naked\n\nUse it.\n", "brings no text"],
  ])("refuses a package that %s", (_what, licence, readme, fault) => {
    const place = path.join(newFolder(), "node_modules/naked");
    mkdirSync(place, { recursive: true });
    writeFileSync(path.join(place, "package.json"), JSON.stringify({ name: "naked", version: "1.0.0", ...licence }));
    writeFileSync(path.join(place, "index.js"), "");
    if (readme !== undefined) writeFileSync(path.join(place, "README.md"), readme);
    const input = path.relative(root, path.join(place, "index.js"));
    expect(() => thirdParty([{ inputs: { [input]: {} } }])).toThrow(fault);
  });
});
