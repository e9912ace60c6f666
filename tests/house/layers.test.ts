// Keeps the arrows between the rooms of src/ as the house plan draws them.
import { describe, expect, it } from "vitest";
import { importsOf } from "./imports.ts";
import { codeUnder, type SourceFile } from "./sourceFiles.ts";

/** What a room may import from another: everything, or only the files whose names match. */
type Arrows = Readonly<Record<string, RegExp>>;
const everything = /./;
const shellArrows: Arrows = {
  foundation: everything,
  report: everything,
  analysis: everything,
  scenario: everything,
  cell: /table|words|record/i,
};
const arrows: Readonly<Record<string, Arrows>> = {
  foundation: {},
  core: {},
  engine: { foundation: everything, core: /^(?:core|numbers|tables)$/ },
  physics: { foundation: everything },
  scenario: { foundation: everything, engine: /^(?:calendar|distribution|law)$/, physics: /material/i },
  cell: { foundation: everything, scenario: everything, engine: everything, physics: everything },
  analysis: {
    foundation: everything,
    cell: everything,
    scenario: everything,
    physics: everything,
    engine: /^(?:calendar|distribution|law|sampler|stream)$/,
  },
  report: { foundation: everything, analysis: everything, cell: /record|words/i, scenario: everything },
  cli: shellArrows,
  page: shellArrows,
};
/** The only files that may reach for files and for the process; everything else runs in a page as well. */
const doors = new Set([
  "src/cli/answerWork.ts",
  "src/cli/host.ts",
  "src/cli/loadProgram.ts",
  "src/cli/readTextFile.ts",
  "src/cli/writer.ts",
]);
/** The one public door of the package may import from every room. */
const publicDoor = "src/blowcell.ts";

const roomOf = (path: string) => path.split("/")[1] ?? "";

function faultOfArrow(path: string, target: string): string | undefined {
  if (target.includes("../")) return "climbs out of its room by ../";
  if (target.startsWith("./")) return target.slice(2).includes("/") ? "reaches into a folder" : faultOfEnding(target);
  if (target.startsWith("node:")) return doors.has(path) ? undefined : "reaches for the machine outside the doors";
  if (!target.startsWith("#")) return undefined;
  const [, room = "", file = ""] = /^#(\w+)\/(\w+)\.(?:ts|wasm)$/.exec(target) ?? [];
  if (file === "") return "is not of the form #room/file.ts";
  if (path === publicDoor) return undefined;
  if (room === roomOf(path)) return "takes the long way inside its own room";
  return arrows[roomOf(path)]?.[room]?.test(file) === true ? undefined : `is an arrow that the plan does not draw`;
}

const faultOfEnding = (target: string) => (/\.(?:ts|f64)$/.test(target) ? undefined : "names no .ts file");

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
  return target.startsWith("#") ? `src/${target.slice(1)}` : `src/${roomOf(from)}/${target.slice(2)}`;
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

  it("are all named in the house plan", () => {
    const rooms = new Set(codeUnder("src").map(({ path }) => (path === publicDoor ? "cli" : roomOf(path))));
    expect([...rooms].filter((room) => !(room in arrows))).toEqual([]);
  });
});

describe("the layer test can fail", () => {
  it.each([
    ["src/physics/a.ts", 'import { x } from "#engine/law.ts";', "does not draw"],
    ["src/engine/a.ts", 'import type { X } from "#scenario/scenario.ts";', "does not draw"],
    ["src/analysis/a.ts", 'import { x } from "#engine/simulation.ts";', "does not draw"],
    ["src/cli/a.ts", 'const { x } = await import("#engine/law.ts");', "does not draw"],
    ["src/cli/a.ts", 'import { x } from "../cell/record.ts";', "climbs out"],
    ["src/cell/a.ts", 'import { x } from "#cell/record.ts";', "long way"],
    ["src/cell/a.ts", 'import { x } from "#scenario/scenario";', "not of the form"],
    ["src/cell/a.ts", 'import { readFileSync } from "node:fs";', "reaches for the machine"],
    ["src/cell/a.ts", 'export { x } from "./record.ts";', "barrel"],
    ["src/cell/a.ts", 'export * from "./record.ts";', "barrel"],
  ])("in %s: %s", (path, text, fault) => {
    expect(importFaults([sample(path, text)])).toEqual([expect.stringContaining(fault)]);
  });

  it("but takes no comment and no string for an import", () => {
    const text = '// import { x } from "#engine/law.ts";\nconst words = `import "${"#engine/law.ts"}" from`;';
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
