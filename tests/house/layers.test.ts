// Keeps the imports between the folders of src/ to the rules in drawers.ts.
import { posix } from "node:path";
import { describe, expect, it } from "vitest";
import { rules } from "./drawers.ts";
import { importsOf } from "./imports.ts";
import { codeUnder, filesUnder, type SourceFile } from "./sourceFiles.ts";

/** Each folder with all that it may import from. */
const arrows = new Map(rules.map(([folder, mayImport]) => [folder, new Set(mayImport.split(" "))]));
/** The only files that may reach for files and for the process; everything else runs in a page as well. */
const doors = new Set([
  "src/cli/labor/answerWork.ts",
  "src/cli/machine/host.ts",
  "src/cli/loadProgram.ts",
  "src/cli/machine/readTextFile.ts",
  "src/cli/machine/writer.ts",
]);
/** The one public door of the package may import from every room. */
const publicDoor = "src/blowcell.ts";

const mostFiles = 25;
/** The folder below `src` in which a file stands. */
const folderOf = (path: string) => posix.dirname(path).replace(/^src\/?/, "");

function faultOfArrow(path: string, target: string): string | undefined {
  if (target.startsWith("node:")) return doors.has(path) ? undefined : "reaches for the machine outside the doors";
  if (!/^[#.]/.test(target)) return undefined;
  if (!/\.(?:ts|wasm)$/.test(target)) return "names no .ts file";
  if (path === publicDoor) return undefined;
  const [from, to] = [folderOf(path), folderOf(pathOf(path, target))];
  const fault = target.startsWith("#") ? faultOfLongWay(from, to) : faultOfShortWay(from, target);
  if (fault !== undefined || from === to) return fault;
  return arrows.get(from)?.has(to) === true ? undefined : "is an arrow that the plan does not draw";
}

const faultOfLongWay = (from: string, to: string) =>
  from === to ? "takes the long way inside its own folder" : undefined;

/** Only the compiler of the core does not know `#room/file.ts`. */
function faultOfShortWay(from: string, target: string): string | undefined {
  if (from.split("/")[0] === "core") return undefined;
  if (target.includes("../")) return "climbs out of its folder by ../";
  return target.slice(2).includes("/") ? "reaches into a folder" : undefined;
}

/** Everything wrong with the imports of these files, one line each. */
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

/** Each circle of imports once, as the files along it. */
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

const sample = (path: string, text: string): SourceFile => ({ path, text });

describe("the rooms of src", () => {
  it("import each other only along the arrows of the house plan", () => {
    expect(importFaults(codeUnder("src"))).toEqual([]);
  });

  it("hold no circle of imports", () => {
    expect(circles(codeUnder("src"))).toEqual([]);
  });

  it("have a rule for every folder, and every rule a folder and a reason", () => {
    const folders = new Set(codeUnder("src").map(({ path }) => folderOf(path)));
    folders.delete("");
    expect([...folders].toSorted()).toEqual([...arrows.keys()].toSorted());
    expect(rules.filter(([, , reason]) => reason === "")).toEqual([]);
  });

  it("hold at most 25 files a folder, and in each folder of a room an opening file of three lines", () => {
    const counts = new Map<string, number>();
    for (const { path } of codeUnder("src")) counts.set(folderOf(path), (counts.get(folderOf(path)) ?? 0) + 1);
    expect([...counts].filter(([, count]) => count > mostFiles)).toEqual([]);
    const opened = new Map(
      filesUnder("src").map(({ path, text }) => [path, text.split("\n").filter((line) => line !== "").length]),
    );
    const drawers = [...counts.keys()].filter((folder) => folder.includes("/"));
    expect(drawers.filter((folder) => opened.get(`src/${folder}/README.md`) !== 3)).toEqual([]);
  });
});

describe("the layer test can fail", () => {
  it.each([
    ["src/physics/air/a.ts", 'import { x } from "#engine/distributions/law.ts";', "does not draw"],
    ["src/engine/run/a.ts", 'import type { X } from "#scenario/scenario.ts";', "does not draw"],
    ["src/analysis/study/a.ts", 'import { x } from "#engine/run/simulation.ts";', "does not draw"],
    ["src/cell/table/a.ts", 'import { x } from "#cell/layers/planCell.ts";', "does not draw"],
    ["src/core/state/a.ts", 'import { x } from "../loop/follow.ts";', "does not draw"],
    ["src/cli/commands/a.ts", 'const { x } = await import("#engine/distributions/law.ts");', "does not draw"],
    ["src/cli/commands/a.ts", 'import { x } from "../machine/host.ts";', "climbs out"],
    ["src/cell/run/a.ts", 'import { x } from "#cell/run/record.ts";', "long way"],
    ["src/cell/run/a.ts", 'import { x } from "#scenario/scenario";', "names no .ts file"],
    ["src/cell/run/a.ts", 'import { readFileSync } from "node:fs";', "reaches for the machine"],
    ["src/cell/run/a.ts", 'export { x } from "./record.ts";', "barrel"],
    ["src/cell/run/a.ts", 'export * from "./record.ts";', "barrel"],
  ])("in %s: %s", (path, text, fault) => {
    expect(importFaults([sample(path, text)])).toEqual([expect.stringContaining(fault)]);
  });

  it("but takes no comment and no string for an import", () => {
    const text =
      '// import { x } from "#engine/distributions/law.ts";\nconst words = `import "${"#engine/law.ts"}" from`;';
    expect(importFaults([sample("src/physics/a.ts", text)])).toEqual([]);
  });

  it("on a circle through two rooms", () => {
    const files = [
      sample("src/cell/a.ts", 'import { b } from "#analysis/b.ts";'),
      sample("src/analysis/b.ts", 'import { c } from "./c.ts";'),
      sample("src/analysis/c.ts", 'import type { A } from "#cell/a.ts";'),
    ];
    expect(circles(files)).toEqual(["src/cell/a.ts → src/analysis/b.ts → src/analysis/c.ts → src/cell/a.ts"]);
  });
});
