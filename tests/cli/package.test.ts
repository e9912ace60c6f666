// The package as a stranger gets it: packed, installed into an empty folder, type-checked and run with the README's own example.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { build } from "esbuild";
import { beforeAll, describe, expect, it } from "vitest";
import { bundleSettings, root } from "../tools/bundleSettings.mjs";
import { packagesOf } from "../tools/thirdParty.mjs";
import { newFolder } from "./callBlowcell.ts";

const folder = path.join(newFolder(), "stranger");

function ran(command: string, args: readonly string[], where = folder): { code: number | null; output: string } {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd: where, encoding: "utf8" });
  return { code: status, output: `${stdout}${stderr}` };
}

/** The README's example, word for word. */
function example(): string {
  const readme = readFileSync(path.join(root, "README.md"), "utf8");
  return /```ts\n(.*?)```/su.exec(readme)?.[1] ?? "";
}

beforeAll(() => {
  mkdirSync(folder);
  // The build was made before the tests began; a build now would pull the program from under them.
  const packed = ran("npm", ["pack", "--ignore-scripts", "--silent", "--pack-destination", folder], root);
  const tarball = path.join(folder, packed.output.trim().split("\n").at(-1) ?? "");
  writeFileSync(path.join(folder, "package.json"), JSON.stringify({ name: "stranger", private: true, type: "module" }));
  const installed = ran("npm", ["install", "--prefer-offline", "--no-audit", "--no-fund", tarball]);
  if (installed.code !== 0) throw new Error(installed.output);
}, 120_000);

describe("the package", () => {
  it("brings the program", () => {
    const { version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as { version: string };
    expect(ran("npx", ["--no-install", "blowcell", "--version"])).toEqual({ code: 0, output: `${version}\n` });
    const scenario = "node_modules/blowcell/scenarios/two-station.yaml";
    expect(ran("npx", ["--no-install", "blowcell", "check", scenario]).output).toContain("Ideal cycle: 6.05 s a shot");
  });

  it("type-checks and runs the README's example", { timeout: 60_000 }, () => {
    writeFileSync(path.join(folder, "example.ts"), example());
    const compiler = path.join(root, "node_modules/typescript/bin/tsc");
    const types = ["--types", "node", "--typeRoots", path.join(root, "node_modules/@types")];
    const strict = ["--strict", "--target", "es2023", "--module", "nodenext", ...types, "example.ts"];
    expect(ran(process.execPath, [compiler, ...strict])).toEqual({ code: 0, output: "" });
    const { code, output } = ran(process.execPath, ["example.js"]);
    expect({ code, output }).toMatchObject({ code: 0, output: expect.stringContaining("one-station 12.10 s a shot") });
    expect(output).toMatch(/^1\.9\d times as many good parts$/mu);
  });

  it("has types that are held to: a wrong name is found", { timeout: 60_000 }, () => {
    writeFileSync(path.join(folder, "wrong.ts"), `import { idealCicle } from "blowcell";\nidealCicle();\n`);
    const compiler = path.join(root, "node_modules/typescript/bin/tsc");
    const { code, output } = ran(process.execPath, [
      compiler,
      "--noEmit",
      "--strict",
      "--module",
      "nodenext",
      "wrong.ts",
    ]);
    expect(code).not.toBe(0);
    expect(output).toContain("idealCicle");
  });

  it("names every package whose code it holds, with its licence", async () => {
    const names = readFileSync(path.join(folder, "node_modules/blowcell/dist/THIRD-PARTY.txt"), "utf8");
    const entryPoints = ["src/cli/blowcell.ts", "src/cli/worker.ts", "src/blowcell.ts"];
    const external = ["piscina"];
    const { metafile } = await build({
      ...bundleSettings,
      entryPoints,
      outdir: folder,
      write: false,
      metafile: true,
      external,
    });
    const packages = packagesOf([metafile]);
    expect(packages.length).toBeGreaterThan(20);
    for (const place of packages) {
      const { name, version } = JSON.parse(readFileSync(path.join(root, place, "package.json"), "utf8")) as Record<
        string,
        string
      >;
      expect(names).toMatch(new RegExp(`^${name} ${version} \\([\\w. -]+\\)$`, "mu"));
    }
  });
});
