// Keeps the imports between the folders of src/ to the rules in drawers.ts.
import { posix } from "node:path";
import { describe, expect, it } from "vitest";
import { rules } from "./drawers.ts";
import { importsOf } from "./imports.ts";
import { codeUnder, filesUnder, type SourceFile } from "./sourceFiles.ts";

/** The folders from which each folder may import. */
const arrows = new Map(rules.map(([folder, mayImport]) => [folder, new Set(mayImport.split(" "))]));
/** The only files that may use Node's modules; all other files also run in a page. */
const doors = new Set([
  "src/cli/labor/answerWork.ts",
  "src/cli/machine/host.ts",
  "src/cli/machine/keptCode.ts",
  "src/cli/machine/pageParts.ts",
  "src/cli/loadProgram.ts",
  "src/cli/machine/readTextFile.ts",
  "src/cli/machine/checksum.ts",
  "src/cli/machine/readBytes.ts",
  "src/cli/machine/journal.ts",
  "src/cli/machine/stage.ts",
  "src/cli/machine/writer.ts",
]);
/** The public entry of the package may import from every room. */
const publicDoor = "src/blowcell.ts";

const mostFiles = 25;
/** The folder of a file below `src`. */
const folderOf = (path: string) => posix.dirname(path).replace(/^src\/?/, "");

function faultOfArrow(path: string, target: string): string | undefined {
  if (target.startsWith("node:")) return doors.has(path) ? undefined : "uses the machine outside the permitted files";
  if (!/^[#.]/.test(target)) return undefined;
  if (!/\.(?:ts|wasm)$/.test(target)) return "names no .ts file";
  if (path === publicDoor) return undefined;
  const [from, to] = [folderOf(path), folderOf(pathOf(path, target))];
  const fault = target.startsWith("#") ? faultOfAlias(from, to) : faultOfRelative(from, target);
  if (fault !== undefined || from === to) return fault;
  return arrows.get(from)?.has(to) === true ? undefined : "is not permitted by the rules";
}

const faultOfAlias = (from: string, to: string) => (from === to ? "uses # inside its own folder" : undefined);

/** The compiler of the core does not support `#room/file.ts`, so the core may use `../`. */
function faultOfRelative(from: string, target: string): string | undefined {
  if (from.split("/")[0] === "core") return undefined;
  if (target.includes("../")) return "leaves its folder by ../";
  return target.slice(2).includes("/") ? "reaches into a folder" : undefined;
}

/** The faults of the imports of these files, one line each. */
function importFaults(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap(({ path, text }) =>
    importsOf(text).flatMap(({ target, line, reexport }) => {
      const fault = reexport && path !== publicDoor ? "is a re-export (a barrel)" : faultOfArrow(path, target);
      return fault === undefined ? [] : [`${path}:${line} ${target} ${fault}`];
    }),
  );
}

function pathOf(from: string, target: string): string {
  return target.startsWith("#") ? `src/${target.slice(1)}` : posix.join(posix.dirname(from), target);
}

/** The circles of imports, each as the files along it. */
function circles(files: readonly SourceFile[]): readonly string[] {
  const targets = new Map(
    files.map(({ path, text }) => [
      path,
      importsOf(text)
        .filter(({ target }) => /^[#.]/.test(target))
        .map(({ target }) => pathOf(path, target)),
    ]),
  );
  const found: string[] = [];
  const finished = new Set<string>();
  const visit = (path: string, trail: readonly string[]): void => {
    if (trail.includes(path)) found.push([...trail.slice(trail.indexOf(path)), path].join(" → "));
    if (trail.includes(path) || finished.has(path)) return;
    for (const target of targets.get(path) ?? []) visit(target, [...trail, path]);
    finished.add(path);
  };
  for (const path of targets.keys()) visit(path, []);
  return found;
}

/** Folders with too many files to overview. */
function crowdedFolders(files: readonly SourceFile[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const { path } of files) counts.set(posix.dirname(path), (counts.get(posix.dirname(path)) ?? 0) + 1);
  return [...counts].filter(([, count]) => count > mostFiles).map(([folder]) => folder);
}

const sample = (path: string, text: string): SourceFile => ({ path, text });

describe("the rooms of src", () => {
  it("import each other only as the rules permit", () => {
    expect(importFaults(codeUnder("src"))).toEqual([]);
  });

  it("have no circle of imports", () => {
    expect(circles(codeUnder("src"))).toEqual([]);
  });

  it("have one rule for every folder, with a reason", () => {
    const folders = new Set(codeUnder("src").map(({ path }) => folderOf(path)));
    folders.delete("");
    expect([...folders].toSorted()).toEqual([...arrows.keys()].toSorted());
    expect(rules.filter(([, , reason]) => reason === "")).toEqual([]);
  });

  it("have a README of three lines in every folder of a room", () => {
    const opened = new Map(
      filesUnder("src").map(({ path, text }) => [path, text.split("\n").filter((line) => line !== "").length]),
    );
    const folders = new Set(codeUnder("src").map(({ path }) => folderOf(path)));
    const drawers = [...folders].filter((folder) => folder.includes("/"));
    expect(drawers.filter((folder) => opened.get(`src/${folder}/README.md`) !== 3)).toEqual([]);
  });
});

describe("a folder of src or tests", () => {
  it("holds at most 25 files of code", () => {
    expect([...crowdedFolders(codeUnder("src")), ...crowdedFolders(codeUnder("tests"))]).toEqual([]);
  });

  it("is reported when it holds 26", () => {
    const files = Array.from({ length: mostFiles + 1 }, (_, i) => sample(`tests/theory/${i}.test.ts`, ""));
    expect(crowdedFolders(files)).toEqual(["tests/theory"]);
    expect(crowdedFolders(files.slice(1))).toEqual([]);
  });
});

describe("the layer test", () => {
  it.each([
    ["src/physics/air/a.ts", 'import { x } from "#engine/distributions/moments.ts";', "not permitted"],
    ["src/engine/run/a.ts", 'import type { X } from "#scenario/scenario.ts";', "not permitted"],
    ["src/analysis/study/a.ts", 'import { x } from "#engine/run/simulation.ts";', "not permitted"],
    ["src/cell/table/a.ts", 'import { x } from "#cell/layers/planCell.ts";', "not permitted"],
    ["src/core/state/a.ts", 'import { x } from "../loop/follow.ts";', "not permitted"],
    ["src/cli/commands/a.ts", 'const { x } = await import("#engine/distributions/moments.ts");', "not permitted"],
    ["src/cli/commands/a.ts", 'import { x } from "../machine/host.ts";', "leaves its folder"],
    ["src/cell/run/a.ts", 'import { x } from "#cell/run/record.ts";', "uses #"],
    ["src/cell/run/a.ts", 'import { x } from "#scenario/scenario";', "names no .ts file"],
    ["src/cell/run/a.ts", 'import { readFileSync } from "node:fs";', "uses the machine"],
    ["src/cell/run/a.ts", 'export { x } from "./record.ts";', "barrel"],
    ["src/cell/run/a.ts", 'export * from "./record.ts";', "barrel"],
  ])("fails in %s: %s", (path, text, fault) => {
    expect(importFaults([sample(path, text)])).toEqual([expect.stringContaining(fault)]);
  });

  it("ignores comments and strings", () => {
    const text =
      '// import { x } from "#engine/distributions/moments.ts";\nconst words = `import "${"#engine/distribution.ts"}" from`;';
    expect(importFaults([sample("src/physics/a.ts", text)])).toEqual([]);
  });

  it("fails on a circle through two rooms", () => {
    const files = [
      sample("src/cell/a.ts", 'import { b } from "#analysis/b.ts";'),
      sample("src/analysis/b.ts", 'import { c } from "./c.ts";'),
      sample("src/analysis/c.ts", 'import type { A } from "#cell/a.ts";'),
    ];
    expect(circles(files)).toEqual(["src/cell/a.ts → src/analysis/b.ts → src/analysis/c.ts → src/cell/a.ts"]);
  });
});
